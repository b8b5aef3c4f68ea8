// A rule for markdown-it: the elements of a living article stand in Markdown, also where other HTML does not.
import { isBlock, markAt, markup } from "./marks.js";

const start = /^<mw-[a-z]/i;

/**
 * Lets Meshwright's elements through, their attributes checked; one with a fault is left as the author's text.
 *
 * @param md a markdown-it
 * @param options `tell(fault, env)` hears what is wrong with an element; without it, the console does
 */
export default function meshwright(md, { tell = (fault) => console.warn(`Meshwright: ${fault}`) } = {}) {
  const read = (text, at, env) => {
    const found = markAt(text, at, { scripts: md.options.html === true });
    return found && { ...found, say: () => found.faults.forEach((fault) => tell(fault, env)) };
  };

  md.inline.ruler.before("autolink", "meshwright", (state, silent) => {
    if (state.src[state.pos] !== "<" || !start.test(state.src.slice(state.pos, state.pos + 5))) return false;
    const found = read(state.src, state.pos, state.env);
    if (!found || found.end > state.posMax) return false;
    if (!silent) {
      found.say();
      state.push("html_inline", "", 0).content = markup(found);
    }
    state.pos = found.end;
    return true;
  });

  // A block on lines of its own is no paragraph: a table inside would be thrown out of it.
  md.block.ruler.before(
    "html_block",
    "meshwright",
    (state, first, last, silent) => {
      if (state.sCount[first] - state.blkIndent >= 4) return false;
      if (state.src[state.bMarks[first] + state.tShift[first]] !== "<") return false;
      const lines = state.getLines(first, last, state.blkIndent, false);
      const text = lines.slice(lines.search(/\S|$/));
      const [wrap] = /^<div>\s*(?=<mw-)/i.exec(text) ?? [""];
      const [, tag = ""] = /^<(mw-[a-z-]+)/i.exec(text.slice(wrap.length)) ?? [];
      if (!isBlock(tag.toLowerCase())) return false;
      const found = read(text, wrap.length, state.env);
      if (!found) return false;
      const rest = /^(?:[ \t]*<\/div>)?[ \t]*(?=\n|$)/.exec(text.slice(found.end));
      if (!rest || rest[0].includes("</div>") !== (wrap !== "")) return false;
      if (silent) return true;
      found.say();
      state.line = first + text.slice(0, found.end + rest[0].length).split("\n").length;
      const token = state.push("html_block", "", 0);
      token.map = [first, state.line];
      token.content = `<div>${markup(found)}</div>\n`;
      return true;
    },
    { alt: ["paragraph", "reference", "blockquote"] },
  );
}
