import { html, svg, type TemplateResult } from "lit";
import qrcode from "qrcode-generator";

/** Longer than this a code is too fine for a phone in a garage. */
const longestCode = 1200;

/** Around a code, in its own squares: without it phones do not find it. */
const quiet = 4;

/** A code that opens an address, black on white whatever the page looks like; nothing where it would be too fine. */
export function codeOf(address: string): TemplateResult | undefined {
  if (address.length > longestCode) return undefined;
  const code = qrcode(0, "L");
  code.addData(address, "Byte");
  code.make();
  const size = code.getModuleCount();
  let path = "";
  for (let y = 0; y < size; y++)
    for (let x = 0; x < size; x++) if (code.isDark(y, x)) path += `M${x + quiet} ${y + quiet}h1v1h-1z`;
  const whole = size + 2 * quiet;
  return html`<svg
    class="code"
    viewBox="0 0 ${whole} ${whole}"
    role="img"
    aria-label="A code for a phone: opens these counts and mounts in the notebook"
    shape-rendering="crispEdges"
  >
    ${svg`<rect width=${whole} height=${whole} fill="#fff" /><path d=${path} fill="#000" />`}
  </svg>`;
}

/** Whether a page can be reached from another device: not from disk, and not where it is served to this machine alone. */
export const reachOf = (address: string): "disk" | "here" | "anywhere" => {
  const { protocol, hostname } = new URL(address);
  if (!/^https?:$/.test(protocol)) return "disk";
  return /^(localhost|127\.\d+\.\d+\.\d+|\[::1\])$/.test(hostname) ? "here" : "anywhere";
};
