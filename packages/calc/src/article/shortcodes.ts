// Elements as shortcodes: {{< mw-value of="front" >}}44.30{{< /mw-value >}}.

const tag = /<(\/?)(mw-[a-z][a-z-]*)((?:\s+[^\s"'<>/=]+(?:\s*=\s*(?:"[^"]*"|'[^']*'|[^\s"'=<>`]+))?)*)\s*>/gi;
const attribute = /([^\s"'<>/=]+)(?:\s*=\s*(?:"([^"]*)"|'([^']*)'|([^\s"'=<>`]+)))?/g;
const shortcode = /\{\{([<%])(\s*)(\/?)(\s*)(mw-[a-z][a-z-]*)((?:[^"`>%]|"[^"]*"|`[^`]*`|[>%](?!\}\}))*?)([>%])\}\}/gi;

const decoded = (text: string): string =>
  text
    .replace(/&lt;/g, "<")
    .replace(/&gt;/g, ">")
    .replace(/&quot;/g, '"')
    .replace(/&amp;/g, "&");

/** A value as a shortcode takes it: what holds a quotation mark stands between backticks, and holds none of those. */
const quoted = (value: string): string =>
  value.includes('"') ? `\`${value.replace(/`/g, "\\u0060").replace(/'/g, "\\u0027")}\`` : `"${value}"`;

/**
 * A text whose elements are tags, with shortcodes in their place.
 *
 * @example
 * withShortcodes('<mw-value of="front">44.30</mw-value>'); // => '{{< mw-value of="front" >}}44.30{{< /mw-value >}}'
 */
export function withShortcodes(text: string): string {
  // A wrapper would be a tag again, which a site may not let through.
  const bare = text.replace(/<div>(<mw-[^]*?<\/mw-[a-z-]+>)<\/div>/gi, "$1");
  return bare.replace(tag, (_, end: string, name: string, attributes: string) => {
    const said = [...attributes.matchAll(attribute)].map(
      ([, key, ...values]) => ` ${key!}=${quoted(decoded(values.find((one) => one !== undefined) ?? ""))}`,
    );
    return `{{< ${end}${name}${said.join("")} >}}`;
  });
}

/**
 * A text whose elements are shortcodes, with tags in their place, each as long as it was: every other character stays where it is.
 *
 * @example
 * withTags('{{< mw-value of="front" >}}44.30{{< /mw-value >}}'); // => '<mw-value of="front"      >44.30</mw-value      >'
 */
export function withTags(text: string): string {
  return text.replace(shortcode, (whole, _open, _space, end: string, _blank, name: string, attributes: string) => {
    const said = attributes.replace(/`([^`]*)`/g, (quote, value: string) =>
      value.includes("'") ? quote : `'${value}'`,
    );
    const start = `<${end}${name}${said.trimEnd().replace(/\/$/, " ")}`;
    return `${start}${" ".repeat(Math.max(0, whole.length - start.length - 1))}>`;
  });
}
