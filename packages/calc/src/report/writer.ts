import { figureWords } from "../languages/index.js";
import { BareWriter, type Writing } from "./bare-writer.js";

/** A writer that speaks English where no other words are given. */
export class Writer extends BareWriter {
  constructor(writing: Writing = {}) {
    super({ ...writing, words: writing.words ?? figureWords });
  }
}
