// Stands before anything else in a page: keeps a record of what goes wrong, and reads the page as a reader does.
window.wrong = [];
addEventListener(
  "error",
  (event) => wrong.push(event.message || `a file failed: ${event.target.src || event.target.href}`),
  true,
);
addEventListener("unhandledrejection", (event) => wrong.push(String(event.reason)));
document.addEventListener("securitypolicyviolation", (event) => wrong.push(`policy ${event.violatedDirective}`));
window.warned = [];
for (const name of ["warn", "error"]) {
  const say = console[name];
  console[name] = (...words) => {
    warned.push(words.join(" "));
    say.apply(console, words);
  };
}

/** What can be read in a node as it is drawn: shadow trees in, hidden things and controls out. */
window.reads = (node = document.body) => {
  const text = (one) => {
    if (one.nodeType === 3) return one.data;
    if (one.nodeType !== 1 && one.nodeType !== 11) return "";
    if (one.nodeType === 1) {
      if (/^(script|style|template|input|select|option|title)$/i.test(one.localName)) return "";
      if (one.className === "heard") return "";
      const { display, visibility } = getComputedStyle(one);
      if (display === "none" || visibility === "hidden") return "";
      const inner = one.shadowRoot ?? one;
      const nodes = one.localName === "slot" && one.assignedNodes().length ? one.assignedNodes() : inner.childNodes;
      const all = [...nodes].map(text).join("");
      return /^(block|flex|grid|list-item|table.*)$/.test(display) ? ` ${all} ` : all;
    }
    return [...one.childNodes].map(text).join("");
  };
  return text(typeof node === "string" ? document.querySelector(node) : node)
    .replace(/\s+/g, " ")
    .trim();
};

const nth = (name, index, root = document) => root.querySelectorAll(name)[index];
/** What a value shows. */
window.shown = (index = 0, root = document) => reads(nth("mw-value", index, root));
/** What a count shows, without its note. */
window.count = (index = 0, root = document) => {
  const element = nth("mw-teeth", index, root);
  // While it is right, the author's own text is what is shown.
  return (element.shadowRoot?.querySelector(".text")?.textContent || element.textContent).trim();
};
window.field = (index = 0, root = document) => nth("mw-teeth", index, root).shadowRoot.querySelector("input");
/** Changes a count by its keys. */
window.step = (times = 1, index = 0, root = document) => {
  const input = field(index, root);
  input.focus();
  const key = times < 0 ? "ArrowDown" : "ArrowUp";
  for (let n = 0; n < Math.abs(times); n++) {
    input.dispatchEvent(new KeyboardEvent("keydown", { key, bubbles: true, composed: true, cancelable: true }));
  }
};
/** Types into a count and commits it. */
window.typed = (text, index = 0, root = document) => {
  const input = field(index, root);
  input.focus();
  input.value = text;
  input.dispatchEvent(new InputEvent("input", { bubbles: true, composed: true }));
  input.dispatchEvent(new KeyboardEvent("keydown", { key: "Enter", bubbles: true, composed: true, cancelable: true }));
};
/** Resolves when everything that is under way has been drawn. */
window.settled = () =>
  new Promise((resolve) => setTimeout(() => requestAnimationFrame(() => setTimeout(resolve, 0)), 30));
/** Resolves once the address has settled into what is expected. */
window.addressed = async (pattern) => {
  for (let n = 0; n < 100 && !pattern.test(location.hash); n++) await new Promise((done) => setTimeout(done, 50));
  return location.hash;
};
/** Whether the elements live: the first value is drawn. */
window.alive = (index = 0, root = document) =>
  !!nth("mw-value", index, root)?.shadowRoot?.querySelector('[part="value"]');
/** Adds the library now. */
window.load = (name = "meshwright.js", options = {}) =>
  new Promise((resolve, reject) => {
    const script = Object.assign(
      document.createElement("script"),
      { src: `/${name}`, onload: resolve, onerror: reject },
      options,
    );
    document.head.append(script);
  });
/** What a build tells its author. */
window.findings = (index = 0) => {
  const build = document.querySelectorAll("mw-build")[index];
  return (build.findings ?? []).map(({ at, message }) => `${at} ${message}`.trim());
};
