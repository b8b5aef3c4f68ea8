// A folder as an archive, nothing in it pressed: what WordPress takes as a plugin.
import { readFileSync } from "node:fs";
import { basename, relative, sep } from "node:path";
import { crc32 } from "node:zlib";
import { filesBelow } from "../lib/paths.js";

const numbers = (...pairs) => {
  const bytes = Buffer.alloc(pairs.reduce((all, [size]) => all + size, 0));
  let at = 0;
  for (const [size, value] of pairs) {
    bytes.writeUIntLE(value, at, size);
    at += size;
  }
  return bytes;
};

/** The first of January 1980: an archive of the same files is the same archive. */
const day = (1 << 5) | 1;

/** The archive of a folder, whose name every file in it begins with. */
export function zipOf(folder) {
  const files = [];
  const list = [];
  let at = 0;
  for (const path of filesBelow(folder)) {
    const data = readFileSync(path);
    const name = Buffer.from(`${basename(folder)}/${relative(folder, path).split(sep).join("/")}`);
    // Needs version 2.0; names are UTF-8; stored; time, day; check; sizes; lengths of name and extra.
    const common = numbers(
      ...[
        [2, 20],
        [2, 0x800],
        [2, 0],
        [2, 0],
        [2, day],
        [4, crc32(data)],
      ],
      ...[
        [4, data.length],
        [4, data.length],
        [2, name.length],
        [2, 0],
      ],
    );
    files.push(numbers([4, 0x04034b50]), common, name, data);
    list.push(numbers([4, 0x02014b50], [2, 20]), common, numbers([2, 0], [2, 0], [2, 0], [4, 0], [4, at]), name);
    at += 4 + common.length + name.length + data.length;
  }
  const size = list.reduce((all, one) => all + one.length, 0);
  const count = list.length / 4;
  const end = numbers([4, 0x06054b50], [2, 0], [2, 0], [2, count], [2, count], [4, size], [4, at], [2, 0]);
  return Buffer.concat([...files, ...list, end]);
}
