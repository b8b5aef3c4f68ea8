import type { Range } from "./article.js";
import type { Places } from "./html.js";

/** A stretch of what is written, and the stretch of the file that it comes from. */
interface Piece {
  readonly here: number;
  readonly hereEnd: number;
  readonly there: number;
  /** The first of the pieces that stand together in the file as well, without a gap. */
  readonly first: number;
}

/** HTML as it is written, and where each piece of it stands in the file. */
export class Written implements Places {
  readonly #texts: string[] = [];
  readonly #pieces: Piece[] = [];
  #length = 0;

  get text(): string {
    return this.#texts.join("");
  }

  /** Adds what the file does not have. */
  add(text: string): void {
    this.#texts.push(text);
    this.#length += text.length;
  }

  /** Adds what the file has at a place. */
  copy(text: string, there: number): void {
    if (!text) return;
    const last = this.#pieces.at(-1);
    const here = this.#length;
    const joined = last?.hereEnd === here && last.there + here - last.here === there;
    this.add(text);
    const first = joined ? last.first : this.#pieces.length;
    this.#pieces.push({ here, hereEnd: this.#length, there, first });
  }

  #pieceAt(here: number): Piece | undefined {
    let [low, high] = [0, this.#pieces.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.#pieces[middle]!.hereEnd <= here) low = middle + 1;
      else high = middle;
    }
    const piece = this.#pieces[low];
    return piece && piece.here <= here ? piece : undefined;
  }

  at(here: number): number | undefined {
    const piece = this.#pieceAt(here);
    return piece && piece.there + here - piece.here;
  }

  stretch(start: number, end: number): Range | undefined {
    const [one, other] = [this.#pieceAt(start), this.#pieceAt(end - 1)];
    if (!one || one.first !== other?.first) return undefined;
    return [one.there + start - one.here, other.there + end - other.here];
  }
}
