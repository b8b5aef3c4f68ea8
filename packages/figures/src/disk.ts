import { randomUUID } from "node:crypto";
import {
  accessSync,
  closeSync,
  constants,
  fchmodSync,
  fchownSync,
  fstatSync,
  fsyncSync,
  openSync,
  readFileSync,
  realpathSync,
  renameSync,
  statSync,
  unlinkSync,
  writeSync,
  type Stats,
} from "node:fs";
import { dirname, join } from "node:path";

const largest = 10_000_000;

/** What keeps a file from being read or written, as a sentence about it. */
export class Refused extends Error {}

const sentences: Readonly<Record<string, string>> = {
  ENOENT: "is not there",
  EACCES: "may not be read or written by you",
  EPERM: "may not be read or written by you",
  EROFS: "stands on a disk that is not written to",
  ENOSPC: "could not be written: the disk is full",
  EDQUOT: "could not be written: your share of the disk is full",
  EISDIR: "is a folder",
  ELOOP: "is a link that leads back to itself",
};

/** The sentence that an error of the system comes to. */
export function sentenceOf(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException;
  return (code !== undefined && sentences[code]) || message;
}

/** A file that was read, and what it was then. */
export interface ReadFile {
  readonly text: string;
  readonly seen: Stats;
}

function decoded(bytes: Buffer): string {
  if (/^(fffe|feff)/.test(bytes.toString("hex", 0, 2))) throw new Refused("is UTF-16; expected UTF-8");
  if (bytes.includes(0)) throw new Refused("is not text");
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new Refused("is not UTF-8");
  }
}

/**
 * Reads a file as the text that it is.
 *
 * @throws Refused where it is none, or too large
 */
export function readText(path: string): ReadFile {
  // What is no file may keep its reader waiting for ever.
  if (!statSync(path).isFile()) throw new Refused("is not a file");
  const file = openSync(path, "r");
  try {
    const seen = fstatSync(file);
    if (seen.size > largest) throw new Refused(`has more than ${largest / 1e6} MB, which no article has`);
    return { text: decoded(readFileSync(file)), seen };
  } finally {
    closeSync(file);
  }
}

/** Looks at the bits themselves: nothing keeps root from writing. */
function mayBeWritten(path: string, { mode, uid }: Stats): boolean {
  const user = process.getuid?.();
  if (user === undefined || user === 0 || user === uid) return (mode & 0o200) !== 0;
  try {
    accessSync(path, constants.W_OK);
    return true;
  } catch {
    return false;
  }
}

function unchanged(path: string, seen: Stats): void {
  const now = statSync(path);
  if (now.ino !== seen.ino || now.mtimeMs !== seen.mtimeMs || now.size !== seen.size)
    throw new Refused("was changed by somebody else meanwhile");
}

/** A disk that fills up takes a part and says so only when it is asked for the rest. */
function writeWhole(file: number, bytes: Buffer): void {
  for (let at = 0; at < bytes.length;) at += writeSync(file, bytes, at, bytes.length - at);
}

function syncFolder(folder: string): void {
  try {
    const file = openSync(folder, "r");
    try {
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
  } catch {
    // Not every system lets a folder be synced; the file itself is whole.
  }
}

/**
 * Puts a text in the place of a file, at once: whoever looks sees the old file or the new one, whatever happens meanwhile.
 * Links are followed, mode bits and owner kept.
 *
 * @param seen what the file was when it was read
 * @throws Refused, and errors of the system; the file is then as it was
 */
export function replaceText(path: string, text: string, seen: Stats): void {
  const real = realpathSync(path);
  unchanged(real, seen);
  if (!mayBeWritten(real, seen)) throw new Refused("may not be written: its mode bits forbid it");
  if (seen.nlink > 1) throw new Refused("has other names (hard links), which would keep the old text");
  const temporary = join(dirname(real), `.figures-${randomUUID()}.tmp`);
  // For nobody else until it has the bits of the file.
  const file = openSync(temporary, "wx", 0o600);
  let open = true;
  const giveUp = () => {
    try {
      if (open) closeSync(file);
      unlinkSync(temporary);
    } catch {
      // What is left of it bears a name that nobody looks at.
    }
  };
  try {
    writeWhole(file, Buffer.from(text));
    const made = fstatSync(file);
    if (made.uid !== seen.uid || made.gid !== seen.gid) {
      try {
        fchownSync(file, seen.uid, seen.gid);
      } catch {
        // Only root gives files away.
      }
    }
    fchmodSync(file, seen.mode & 0o7777);
    fsyncSync(file);
    closeSync(file);
    open = false;
    unchanged(real, seen);
    renameSync(temporary, real);
  } catch (error) {
    giveUp();
    throw error;
  }
  syncFolder(dirname(real));
}
