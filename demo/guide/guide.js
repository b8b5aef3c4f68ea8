// What the guide's pages do besides being read: buttons that copy, a search over all of them, colours to try, the script files'
// sizes and hashes. Without it, everything can be read all the same.

/** An element with attributes and content. */
function make(tag, attributes = {}, ...content) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  element.append(...content);
  return element;
}

for (const code of document.querySelectorAll("code[data-snippet]")) {
  const button = make("button", { type: "button", class: "copy" }, "Copy");
  button.addEventListener("click", async () => {
    try {
      await navigator.clipboard.writeText(code.textContent);
      button.textContent = "Copied";
    } catch {
      getSelection().selectAllChildren(code);
      button.textContent = "Selected";
    }
    setTimeout(() => (button.textContent = "Copy"), 2000);
  });
  code.parentElement.before(button);
}

// Search: an index of all pages' sections, made in the browser when somebody begins to search.

const nav = document.querySelector("nav");
const pages = [...nav.querySelectorAll("a")].filter((link) => /^[\w-]+\.html$/.test(link.getAttribute("href")));

/** A page's sections: what stands below each heading that can be led to. */
async function sectionsOf(link) {
  const answer = await fetch(link.href);
  const page = new DOMParser().parseFromString(await answer.text(), "text/html");
  for (const one of page.querySelectorAll("nav, script, mw-build")) one.remove();
  const sections = [];
  const walker = page.createTreeWalker(page.querySelector("article"), NodeFilter.SHOW_ELEMENT | NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    if (/^H[1-3]$/.test(node.tagName)) {
      const place = node.id ? `#${node.id}` : "";
      sections.push({
        id: link.getAttribute("href") + place,
        page: link.textContent,
        title: node.textContent.trim(),
        text: "",
      });
    } else if (node.nodeType === Node.TEXT_NODE && sections.length > 0) sections.at(-1).text += ` ${node.data}`;
  }
  return sections;
}

let index;
async function search(words) {
  index ??= (async () => {
    const { default: MiniSearch } = await import("./minisearch/index.js");
    const made = new MiniSearch({
      fields: ["title", "text"],
      storeFields: ["page", "title", "text"],
      searchOptions: { boost: { title: 4 }, prefix: true, fuzzy: 0.2, combineWith: "AND" },
    });
    made.addAll((await Promise.all(pages.map(sectionsOf))).flat());
    return made;
  })();
  return (await index).search(words).slice(0, 12);
}

const field = make("input", {
  type: "search",
  name: "q",
  autocomplete: "off",
  "aria-label": "Search the guide",
  placeholder: "Search the guide",
});
const found = make("ol", { class: "found", hidden: "", "aria-label": "Found" });
const told = make("p", { class: "told", role: "status" });
nav.append(make("search", {}, field, told, found));

let asked = 0;
field.addEventListener("input", async () => {
  const words = field.value.trim();
  const mine = ++asked;
  const results = words.length < 2 ? [] : await search(words);
  if (mine !== asked) return;
  told.textContent = words.length < 2 ? "" : results.length === 0 ? "Nothing found." : `${results.length} found`;
  found.hidden = results.length === 0;
  found.replaceChildren(
    ...results.map(({ id, page, title, text, terms }) => {
      const at = Math.max(0, text.toLowerCase().indexOf(terms[0]) - 40);
      const about = text.slice(at, at + 140).replace(/\s+/g, " ");
      return make(
        "li",
        {},
        make("a", { href: id }, title),
        ` · ${page}`,
        make("br"),
        make("small", {}, `… ${about} …`),
      );
    }),
  );
});

// Colours to try.

const playground = document.querySelector("[data-playground]");
const chosen = document.querySelector("[data-chosen]");
for (const input of document.querySelectorAll("[data-property]"))
  input.addEventListener("input", () => {
    playground.style.setProperty(input.dataset.property, input.value);
    const lines = [...playground.style].filter((name) => name.startsWith("--mw-"));
    chosen.textContent = `article {\n${lines.map((name) => `  ${name}: ${playground.style.getPropertyValue(name)};`).join("\n")}\n}`;
  });

// Sizes and hashes of what was built.

const cells = document.querySelectorAll("[data-file]");
if (cells.length > 0) {
  const { files } = await (await fetch("../meshwright/files.json")).json();
  for (const cell of cells) {
    const { bytes, brotli, integrity } = files.find(({ file }) => file === cell.dataset.file);
    const inKilobytes = (size) => `${(size / 1000).toFixed(1)} kB`;
    cell.append(`${inKilobytes(bytes)}, ${inKilobytes(brotli)} compressed`, make("br"), make("code", {}, integrity));
  }
}
