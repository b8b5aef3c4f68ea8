// A plugin for remark: the elements of a living article become elements of the page, also where other HTML does not.
import { isBlock, markAt, textOf } from "./marks.js";

/** One of our nodes as remark knows nodes, which remark-rehype turns into elements by themselves. */
function nodeOf({ tag, attributes, children, text, json }) {
  if (text !== undefined) return { type: "text", value: decoded(text) };
  if (json !== undefined) return elementOf("script", { type: "application/json" }, [{ type: "text", value: json }]);
  return elementOf(tag, Object.fromEntries(attributes), children.map(nodeOf));
}

const entities = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'", nbsp: "\u00a0", times: "×", minus: "−" };
const decoded = (text) =>
  text.replace(/&(?:#(\d+)|#x([0-9a-f]+)|([a-z]+));/gi, (whole, decimal, hex, name) =>
    decimal
      ? String.fromCodePoint(Number(decimal))
      : hex
        ? String.fromCodePoint(parseInt(hex, 16))
        : (entities[name] ?? whole),
  );

const elementOf = (hName, hProperties, children) => ({ type: "meshwright", data: { hName, hProperties }, children });

/** Neighbours of one parent as the text that they were written as. */
const sourceOf = (nodes, file) => {
  const [from, to] = [nodes[0].position?.start.offset, nodes.at(-1).position?.end.offset];
  return from === undefined || to === undefined ? undefined : String(file).slice(from, to);
};

const isOpening = (node) => node.type === "html" && /^<mw-[a-z]/i.test(node.value);

/** The children with every whole element of ours in its place. */
function withMarks(children, file, tell) {
  const result = [];
  for (let n = 0; n < children.length; n++) {
    const first = children[n];
    const text = isOpening(first) ? sourceOf(children.slice(n), file) : undefined;
    const found = text === undefined ? undefined : markAt(text, 0, { scripts: true });
    if (!found) {
      result.push(first);
      continue;
    }
    const end = first.position.start.offset + found.end;
    const last = children.findIndex((one, at) => at >= n && one.position.end.offset >= end);
    found.faults.forEach((fault) => tell(fault, first));
    if (found.faults.length > 0) result.push({ type: "text", value: decoded(textOf(found.node)) });
    else result.push(nodeOf(found.node));
    // A block of HTML may hold more than our element.
    const rest = String(file).slice(end, children[last].position.end.offset);
    if (rest.trim()) result.push({ type: "html", value: rest });
    n = last;
  }
  return result;
}

/** A block of HTML that is a wrapper around an element of ours. */
function unwrapped(node, tell) {
  const inner = /^<div>\s*(<mw-[\s\S]*)<\/div>\s*$/i.exec(node.value)?.[1];
  const found = inner && markAt(inner, 0, { scripts: true });
  if (!found || inner.slice(found.end).trim()) return node;
  found.faults.forEach((fault) => tell(fault, node));
  const child = found.faults.length > 0 ? { type: "text", value: decoded(textOf(found.node)) } : nodeOf(found.node);
  return elementOf("div", {}, [child]);
}

/**
 * Lets Meshwright's elements through, their attributes checked; one with a fault is left as the author's text and told as a message
 * of the file.
 */
export default function meshwright() {
  return (tree, file) => {
    const tell = (fault, node) => file.message(fault, node, "meshwright");
    const visit = (parent) => {
      for (const child of parent.children) if (child.children) visit(child);
      parent.children = withMarks(parent.children, file, tell).map((node) =>
        node.type === "html" ? unwrapped(node, tell) : node,
      );
      // A block is no paragraph: a table inside would be thrown out of it.
      parent.children = parent.children.map((node) => {
        const inner =
          node.type === "paragraph" ? node.children.filter((one) => one.type !== "text" || one.value.trim()) : [];
        const isBlocks = inner.length > 0 && inner.every((one) => one.type === "meshwright" && isBlock(one.data.hName));
        return isBlocks ? elementOf("div", {}, inner) : node;
      });
    };
    visit(tree);
  };
}
