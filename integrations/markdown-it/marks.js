// Made by `node scripts/integrations.js` from calc's table of attributes, and of scripts/integrations/marks.js.
// Which of our tags and attributes may stand in a page, and what is wrong with one that may not.
const elements = {
  "mw-build": [
    "build",
    "src",
    "json",
    "mode",
    "permalink",
    "notebook",
    "seal",
    "stages",
    "target",
    "compare",
    "centre",
    "motor",
    "battery",
    "controller",
    "mount",
    "title",
    "wheelbase",
    "headline",
    "lengths",
    "front",
    "front-wheel",
    "front-motor",
    "middle",
    "middle-wheel",
    "middle-motor",
    "rear",
    "rear-wheel",
    "rear-motor",
    "left",
    "left-wheel",
    "left-motor",
    "right",
    "right-wheel",
    "right-motor",
    "drive",
    "drive-wheel",
    "drive-motor",
  ],
  "mw-value": [
    "build",
    "figure",
    "of",
    "with",
    "group",
    "base",
    "scope",
    "from",
    "measure",
    "over",
    "unit",
    "digits",
    "sign",
    "drive",
    "at",
  ],
  "mw-teeth": ["build", "of", "label", "min", "max", "free"],
  "mw-ratio-summary": ["build", "of", "at"],
  "mw-overdrive-gauge": ["build", "of", "with", "base", "scope", "at"],
  "mw-edits": ["build", "sticks"],
  "mw-stage-editor": ["build"],
  "mw-train-drawing": ["build", "of", "at"],
  "mw-drive-line": ["build", "still", "chosen", "open", "at"],
  "mw-pair-finder": ["build", "of"],
  "mw-train-finder": ["build", "of", "wheels", "lead"],
  "mw-count-finder": ["build", "of", "figure", "output", "with", "want"],
  "mw-change-table": ["build", "show", "against"],
  "mw-wheel-speed": ["build", "of", "unit", "loaded"],
  "mw-working": ["build", "of", "at"],
  "mw-order-list": ["build", "from", "at"],
  "mw-parts-list": ["build", "at"],
  "mw-bench-card": ["build", "at"],
  "mw-quantity": ["build", "of", "label"],
  "mw-measurements": ["build", "of", "at"],
  "mw-unmarked-gear": ["build"],
  "mw-turn-count": ["build", "of"],
};
const axle = /^axle-[a-z][a-z0-9]*(?:-[a-z0-9]+)*$/;
const words = {
  figure: [
    "reduction",
    "fraction",
    "standing",
    "range",
    "count",
    "counts",
    "direction",
    "gap",
    "lead",
    "farther",
    "leader",
    "drift",
    "taken-up",
    "mean",
    "travel",
    "change",
    "centre",
    "slot",
    "fit",
    "shortfall",
    "backlash",
    "speed",
    "motor-rpm",
    "wheel-rpm",
    "hand-turns",
    "volts",
    "circle",
  ],
  scope: ["tyres", "gears"],
  drive: ["locked", "straight-on"],
  measure: [
    "sentence",
    "arrow",
    "heard",
    "harmonic",
    "arithmetic",
    "reduction",
    "wheel-speed",
    "wheel-torque",
    "midpoint",
    "travel",
    "both",
    "from",
    "to",
    "full",
    "nominal",
    "held",
  ],
  unit: ["mm", "cm", "m", "in", "ft", "km/h", "m/s", "mph", "ft/s", "V"],
  sign: ["none"],
};
const longest = 5000;

const attribute = /\s+([^\s"'<>/=]+)(?:\s*=\s*(?:"([^"]*)"|'([^']*)'|([^\s"'=<>`]+)))?/gy;
const tagStart = /<(\/?)([a-z][a-z0-9-]*)(?=[\s/>])/iy;
const tagEnd = /\s*(\/?)>/y;

/** What may stand on any element: it says nothing of a drivetrain and runs nothing. */
const onAny = /^(?:id|class|lang|dir|title|translate|hidden|role|slot|(?:data|aria)-[a-z0-9-]+)$/;

/** What a fallback is made of, and the attributes that a table's cells may have. */
const fallback = {
  ...Object.fromEntries(
    ["p", "br", "em", "strong", "ul", "ol", "li", "dl", "dt", "dd", "div", "span", "sub", "sup"].map((tag) => [
      tag,
      [],
    ]),
  ),
  ...Object.fromEntries(["table", "caption", "thead", "tbody", "tfoot", "tr"].map((tag) => [tag, []])),
  th: ["scope", "colspan", "rowspan"],
  td: ["colspan", "rowspan"],
};

/** Elements that stand in a sentence; every other one of ours is a block. */
const inline = ["mw-value", "mw-teeth", "mw-quantity"];

export const isMark = (tag) => Object.hasOwn(elements, tag);
export const isBlock = (tag) => isMark(tag) && !inline.includes(tag);

const matchAt = (pattern, text, at) => {
  pattern.lastIndex = at;
  return pattern.exec(text);
};

/** How many letters differ, at most three. */
function slips(one, other) {
  if (Math.abs(one.length - other.length) > 2) return 3;
  let row = [...one, ""].map((_, n) => n);
  for (const [m, letter] of [...other].entries()) {
    const next = [m + 1];
    for (const [n, own] of [...one].entries())
      next.push(Math.min(next[n] + 1, row[n + 1] + 1, row[n] + (own === letter ? 0 : 1)));
    row = next;
  }
  return row[one.length];
}

const nearest = (name, known) => {
  const found = known.filter((one) => slips(name.toLowerCase(), one) <= 2);
  return found.length > 0 ? `; the nearest: ${found.slice(0, 3).join(", ")}` : "";
};

const decoded = (text) =>
  text.replace(/&(amp|lt|gt|quot|#39|apos);/g, (_, name) => ({ amp: "&", lt: "<", gt: ">", quot: '"' })[name] ?? "'");
const encoded = (text) =>
  text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;").replace(/"/g, "&quot;");
/** Text between tags: an entity stays one. */
const plain = (text) =>
  text
    .replace(/&(?!(?:[a-z][a-z0-9]*|#\d+|#x[0-9a-f]+);)/gi, "&amp;")
    .replace(/</g, "&lt;")
    .replace(/>/g, "&gt;");

/** What is wrong with the value of an attribute; nothing where it may stand. */
function valueFault(tag, name, value) {
  if (/[\0-\x08\x0b\x0c\x0e-\x1f\x7f]/.test(value)) return `${name} holds a character that is none of a text`;
  if (value.length > longest && name !== "json") return `${name} has more than ${longest} characters`;
  if (name === "src" && /^\s*[a-z][a-z0-9+.-]*:/i.test(value) && !/^\s*https?:/i.test(value))
    return `${name} leads to no file of a site: ${value.slice(0, 40)}`;
  if (name === "json") {
    try {
      JSON.parse(value);
    } catch {
      return `${name} is no JSON`;
    }
  }
  const known = tag === "mw-value" && Object.hasOwn(words, name) ? words[name] : undefined;
  return known && !known.includes(value) ? `there is no ${name} “${value}”${nearest(value, known)}` : undefined;
}

/** What is wrong with an attribute of one of our elements; nothing where it may stand. */
export function attributeFault(tag, name, value = "") {
  const known = elements[tag];
  const isKnown = known.includes(name) || (tag === "mw-build" && axle.test(name)) || onAny.test(name);
  return isKnown ? valueFault(tag, name, value) : `there is no attribute ${name}${nearest(name, known)}`;
}

/** The tag that begins at a place of a text: its name, attributes and end; nothing where none does. */
function tagAt(text, at) {
  const start = matchAt(tagStart, text, at);
  if (!start) return undefined;
  const attributes = [];
  let end = tagStart.lastIndex;
  for (let found = matchAt(attribute, text, end); found; found = matchAt(attribute, text, end)) {
    const [, name, ...values] = found;
    attributes.push([name.toLowerCase(), decoded(values.find((one) => one !== undefined) ?? "")]);
    end = attribute.lastIndex;
  }
  const close = matchAt(tagEnd, text, end);
  if (!close) return undefined;
  return {
    tag: start[2].toLowerCase(),
    isEnd: start[1] === "/",
    isWhole: close[1] === "/",
    attributes,
    end: tagEnd.lastIndex,
  };
}

const json = /<script\s+type\s*=\s*["']?application\/json["']?\s*>([\s\S]*?)<\/script\s*>/iy;

/**
 * The element of ours that begins at a place of a text.
 *
 * @param scripts whether JSON may stand inside as a script, which needs HTML to be let through
 * @returns where it ends, its nodes (`{ tag, attributes, children }` and `{ text }`) and what is wrong; nothing where there is none
 *   that is whole
 */
export function markAt(text, at, { scripts = false } = {}) {
  const first = tagAt(text, at);
  if (!first || first.isEnd || !isMark(first.tag)) return undefined;
  const faults = [];
  const node = ({ tag, attributes }) => {
    const own = isMark(tag)
      ? attributes.filter(([name, value]) => {
          const fault = attributeFault(tag, name, value);
          if (fault) faults.push(`<${tag}>: ${fault}`);
          return !fault;
        })
      : attributes.filter(([name]) => fallback[tag].includes(name));
    return { tag, attributes: own, children: [] };
  };
  const root = node(first);
  if (first.isWhole) {
    faults.push(`<${first.tag}/> swallows what follows: write <${first.tag}></${first.tag}>`);
    return { end: first.end, node: root, faults };
  }
  const open = [root];
  let end = first.end;
  const add = (one) => open.at(-1).children.push(one);
  while (open.length > 0) {
    const next = text.indexOf("<", end);
    if (next < 0) return undefined;
    if (next > end) add({ text: text.slice(end, next) });
    const script = matchAt(json, text, next);
    const tag = script ? undefined : tagAt(text, next);
    if (script) {
      end = json.lastIndex;
      if (scripts) add({ json: script[1] });
      else faults.push("a script is not let through here: give the build in attributes");
    } else if (!tag || !(isMark(tag.tag) || Object.hasOwn(fallback, tag.tag))) {
      // No tag that a fallback may hold: it is read as text.
      add({ text: "<" });
      end = next + 1;
    } else {
      end = tag.end;
      if (tag.isEnd) {
        const depth = open.findLastIndex((one) => one.tag === tag.tag);
        if (depth >= 0) open.length = depth;
      } else {
        const one = node(tag);
        add(one);
        if (tag.tag !== "br" && !tag.isWhole) open.push(one);
      }
    }
  }
  return { end, node: root, faults };
}

/** A node as HTML. */
export function htmlOf({ tag, attributes, children, text, json: data }) {
  if (text !== undefined) return plain(text);
  if (data !== undefined) return `<script type="application/json">${data.replace(/</g, "\\u003c")}</script>`;
  const said = attributes.map(([name, value]) => ` ${name}="${encoded(value)}"`).join("");
  return `<${tag}${said}>${tag === "br" ? "" : `${children.map(htmlOf).join("")}</${tag}>`}`;
}

/** What the author wrote inside, without any tag. */
export const textOf = ({ text, children = [] }) => (text === undefined ? children.map(textOf).join("") : plain(text));

/** A mark as it may stand in a page: itself, or the author's text where something is wrong with it. */
export const markup = ({ node, faults }) => (faults.length > 0 ? textOf(node) : htmlOf(node));

/** What is wrong with the marks of a page. */
export function faultsIn(html) {
  const faults = [];
  for (let at = html.search(/<mw-/i); at >= 0;) {
    const tag = tagAt(html, at);
    if (tag && !tag.isEnd && !isMark(tag.tag))
      faults.push(`there is no element <${tag.tag}>${nearest(tag.tag, Object.keys(elements))}`);
    else if (tag && !tag.isEnd)
      for (const [name, value] of tag.attributes) {
        const fault = attributeFault(tag.tag, name, value);
        if (fault) faults.push(`<${tag.tag}>: ${fault}`);
      }
    const next = html.slice(at + 1).search(/<mw-/i);
    at = next < 0 ? -1 : at + 1 + next;
  }
  return faults;
}
