// Pieces of HTML that the guide's pages are made from.

export const escaped = (text) => text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");

/** Words of a doc comment as HTML: what stands in backticks is code. */
export const prose = (text) =>
  escaped(text)
    .split(/`([^`]+)`/)
    .map((part, n) =>
      n % 2
        ? `<code>${part}</code>`
        : part
            .replace(/\{@link (\w+)\}/g, "<code>$1</code>")
            .replace(/(\w)'(\w|\s)/g, "$1’$2")
            .replace(/"([^"=]+)"/g, "“$1”"),
    )
    .join("");

export const code = (text) => `<code>${escaped(text)}</code>`;
export const capital = (text) => text.charAt(0).toUpperCase() + text.slice(1);

const row = (cells) =>
  `<tr><th scope="row">${cells[0]}</th>${cells
    .slice(1)
    .map((cell) => `<td>${cell}</td>`)
    .join("")}</tr>`;

/** A table; nothing where it has no row. */
export const table = (heads, rows) =>
  rows.length === 0
    ? ""
    : `<div class="wide" tabindex="0" role="group" aria-label="${escaped(heads[0])}"><table><thead><tr>${heads.map((head) => `<th scope="col">${head}</th>`).join("")}</tr></thead><tbody>${rows.map(row).join("")}</tbody></table></div>`;

/** Code to copy, in one of the languages that are tried: `html`, `ts`, `css`; others are shown only. */
export const snippet = (text, language) =>
  `<pre><code data-snippet="${language}">${escaped(text.trimEnd())}</code></pre>`;

/** A heading's words as its id. */
const idOf = (text) =>
  text
    .replace(/<[^>]+>|&\w+;/g, "")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-|-$/g, "");

/** Gives every heading below the first an id to be led to by. */
export function withIds(page) {
  const taken = new Set([...page.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id));
  return page.replace(/<(h[23])>([^]*?)<\/\1>/g, (whole, tag, inside) => {
    const base = idOf(inside);
    if (!base) return whole;
    let id = base;
    for (let n = 2; taken.has(id); n++) id = `${base}-${n}`;
    taken.add(id);
    return `<${tag} id="${id}">${inside}</${tag}>`;
  });
}
