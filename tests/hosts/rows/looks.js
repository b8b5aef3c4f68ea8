// What a page's styles, sizes and colours do to what is set into it.
import assert from "node:assert/strict";
import { article, attributeBuild, attributes, page, plainSentence, sentence } from "../lib/snippets.js";
import { blocks, wholeBuild } from "../lib/elements.js";

const all = ["chromium", "firefox", "webkit"];
const live = `<article>${wholeBuild}${blocks}<div>${article}</div></article>`;

/** Inside of a page: every element of ours, with its shadow root. Put into the page as text. */
const helpers = `
  window.ours = () => [...document.querySelectorAll("*")].filter((one) => one.localName.startsWith("mw-") && one.shadowRoot);
  window.inside = () => ours().flatMap((one) => [...one.shadowRoot.querySelectorAll("*")]);
  window.styled = (css) => document.head.append(Object.assign(document.createElement("style"), { textContent: css }));
  window.painted = (one) => { for (let at = one; at; at = at.parentNode ?? at.host) if (at.nodeType === 1) { const { backgroundColor } = getComputedStyle(at); if (!/, 0\\)$|transparent/.test(backgroundColor)) return backgroundColor; } return "rgb(255, 255, 255)"; };
  window.channels = (text) => { const canvas = document.createElement("canvas").getContext("2d"); canvas.fillStyle = text; canvas.fillRect(0, 0, 1, 1); return [...canvas.getImageData(0, 0, 1, 1).data]; };
  window.luminance = (text) => { const [r, g, b] = channels(text).map((one) => (one / 255 <= 0.03928 ? one / 255 / 12.92 : ((one / 255 + 0.055) / 1.055) ** 2.4)); return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
  window.contrast = (one) => { const [a, b] = [luminance(getComputedStyle(one).color), luminance(painted(one))]; return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05); };
  window.lettered = () => inside().filter((one) => one.checkVisibility() && !one.closest("button:disabled") && [...one.childNodes].some((node) => node.nodeType === 3 && node.data.trim()));
`;

const open = async (t, body, { css = "", head = "", doctype, ...options } = {}) => {
  const script = t.site.script(helpers);
  const window = await t.open(
    page(body, { doctype, head: `<style>${css}</style>${head}<script src="${script}"></script>` }),
    options,
  );
  await window.run(() => settled());
  await window.run(() => settled());
  return window;
};

export const subject = "A page’s styles, sizes and colours";

export const rows = [
  {
    row: 19,
    title: "Text in rem shrinks under roots of 62.5 % or 8 px",
    software: [],
    engines: all,
    async run(t) {
      const window = await open(t, live, { css: "article{font-size:18px;line-height:1.5}" });
      const seen = await window.run(async () => {
        const sizes = [];
        for (const root of ["8px", "62.5%", "10px", "16px", "20px"]) {
          document.documentElement.style.fontSize = root;
          await settled();
          step(1);
          await settled();
          step(-1);
          await settled();
          sizes.push(
            inside()
              .map((one) => `${one.localName} ${getComputedStyle(one).fontSize}`)
              .join(),
          );
          field().blur();
        }
        return {
          different: new Set(sizes).size,
          small: lettered()
            .filter((one) => parseFloat(getComputedStyle(one).fontSize) < 12.5)
            .map((one) => one.className || one.localName),
        };
      });
      assert.deepEqual(seen, { different: 1, small: [] });
    },
  },
  {
    row: 20,
    title: "Inherited text properties leak in, and a page's * beats :host",
    software: [],
    engines: all,
    async run(t) {
      for (const css of [
        "*{all:unset}",
        "*{all:unset} article{white-space:pre;letter-spacing:5px;line-height:0;text-transform:uppercase}",
        "article{white-space:pre;letter-spacing:5px;line-height:0;text-transform:uppercase;word-spacing:9px;text-indent:3em;text-align:right}",
        "*{display:inline-block}",
        "*{margin:0;padding:0;border:0;box-sizing:border-box;font:inherit}",
        "*::before,*::after{content:'§'}",
        "*{float:left;position:relative;contain:layout}",
      ]) {
        const window = await open(t, live, { css });
        const seen = await window.run(() => {
          const roots = ours()
            .map((one) => one.shadowRoot.querySelector("div.root"))
            .filter(Boolean);
          const wrongly = roots.flatMap((root) => {
            const style = getComputedStyle(root);
            const { height } = root.getBoundingClientRect();
            const lines = parseFloat(style.lineHeight) || 20;
            return [
              style.letterSpacing !== "normal" &&
                style.letterSpacing !== "0px" &&
                `letter-spacing ${style.letterSpacing}`,
              style.whiteSpace !== "normal" && style.whiteSpace !== "wrap" && `white-space ${style.whiteSpace}`,
              style.textTransform !== "none" && style.textTransform,
              lines < 14 && `line-height ${style.lineHeight}`,
              height < 14 &&
                root.getRootNode().host.localName !== "mw-edits" &&
                `${root.getRootNode().host.localName} is ${height} high`,
            ].filter(Boolean);
          });
          return {
            roots: roots.length > 4,
            wrongly,
            json: /meshwright-build/.test(reads("article").replace(/§/g, "")),
            shown: shown(),
            script: [...document.querySelectorAll("mw-build script")].filter((one) => one.checkVisibility()).length,
            wrong,
          };
        });
        assert.deepEqual(seen, { roots: true, wrongly: [], json: false, shown: "44.30", script: 0, wrong: [] }, css);
      }
    },
  },
  {
    row: 21,
    title: "Layout breaks without a doctype",
    software: [],
    engines: all,
    async run(t) {
      const seen = [];
      for (const doctype of ["<!doctype html>", ""]) {
        const window = await open(t, live, { doctype, css: "body{font:20px/1.5 serif;color:#123456;margin:0}" });
        seen.push(
          await window.run(() => ({
            mode: document.compatMode,
            inside: inside()
              .filter((one) => one.checkVisibility())
              .map((one) => {
                const { fontSize, color, lineHeight } = getComputedStyle(one);
                const { width, height } = one.getBoundingClientRect();
                return [`${one.localName} ${fontSize} ${color} ${lineHeight}`, width, height];
              }),
          })),
        );
      }
      assert.notEqual(seen[0].mode, seen[1].mode);
      const [standard, quirks] = seen.map(({ inside }) => inside);
      assert.deepEqual(
        quirks.map(([what]) => what),
        standard.map(([what]) => what),
      );
      for (const [n, [what, width, height]] of standard.entries()) {
        // A line without a letter has no height where there is no doctype. What has no width in either is not seen.
        const isSeen = width > 0 || quirks[n][1] > 0;
        assert.ok(
          !isSeen || (Math.abs(quirks[n][1] - width) < 3 && Math.abs(quirks[n][2] - height) < 3),
          `${what}: ${quirks[n].slice(1)} for ${[width, height]}`,
        );
      }
    },
  },
  {
    row: 22,
    title: "A flash or a shift before the elements are defined",
    software: [],
    engines: ["chromium"],
    elsewhere: "only Chromium measures shifts of layout",
    async run(t) {
      const shifts = t.site.script(
        `window.shift = 0; new PerformanceObserver((list) => { for (const one of list.getEntries()) shift += one.value; }).observe({ type: "layout-shift", buffered: true });`,
      );
      t.site.set(
        "/late.js",
        (await import("node:fs")).readFileSync(
          (await import("../../../scripts/lib/paths.js")).at("packages", "elements", "dist", "meshwright.js"),
          "utf8",
        ),
        { type: "text/javascript", pause: 2000 },
      );
      const prose = `${sentence}<p>${"The tide went out, and the tractor with it. ".repeat(12)}</p>`;
      const window = await t.open(
        page(`<main>${attributeBuild}${prose.repeat(6)}</main>`, {
          library: "",
          head: `<script src="${shifts}"></script><script src="/late.js" defer></script>`,
        }),
        { own: true, wait: "domcontentloaded", before: () => undefined },
      );
      await window.run(() => settled());
      assert.equal(await window.run(() => reads(".sentence")), plainSentence);
      await window.run(() => customElements.whenDefined("mw-value").then(() => undefined));
      await window.run(() => new Promise((done) => setTimeout(done, 300)));
      assert.equal(await window.run(() => alive()), true);
      const shift = await window.run(() => window.shift);
      assert.ok(shift < 0.02, `layout shift ${shift}`);
    },
  },
  {
    row: 30,
    title: "Double-tap zooms on steppers; focus zooms where letters are below 16 px",
    software: [],
    engines: ["chromium"],
    elsewhere: "only Chromium plays a touch screen",
    async run(t) {
      const window = await open(t, live, {
        css: "body{font-size:13px}",
        own: true,
        before: (page) => page.setViewport({ width: 390, height: 844, isMobile: true, hasTouch: true }),
      });
      const seen = await window.run(async () => {
        field().focus();
        await settled();
        const controls = inside().filter(
          (one) => /^(button|input|select)$/.test(one.localName) && one.checkVisibility(),
        );
        return {
          some: controls.length > 4,
          zooming: controls
            .filter((one) => getComputedStyle(one).touchAction !== "manipulation")
            .map((one) => one.outerHTML.slice(0, 80)),
          small: controls
            .filter((one) => /^(input|select)$/.test(one.localName) && parseFloat(getComputedStyle(one).fontSize) < 16)
            .map((one) => one.outerHTML.slice(0, 80)),
          narrow: controls
            .filter((one) => {
              const box = one.getBoundingClientRect();
              return box.width < 23.9 || box.height < 23.9;
            })
            .map((one) => one.outerHTML.slice(0, 80)),
        };
      });
      assert.deepEqual(seen, { some: true, zooming: [], small: [], narrow: [] });
    },
  },
  {
    row: 35,
    title: "A dark system and a light page, and the other way round",
    software: [],
    engines: ["chromium"],
    elsewhere: "only Chromium lets a test choose what the system prefers",
    async run(t) {
      const pages = {
        "light page": "html{background:#fff;color:#222}",
        "dark page": "html{background:#111;color:#ddd}",
        "dark page of a light scheme": ":root{color-scheme:light} body{background:#111;color:#ddd}",
        "light card on a dark page": "html{background:#111;color:#ddd} article{background:#fafafa;color:#222}",
      };
      for (const value of ["dark", "light"]) {
        for (const [name, css] of Object.entries(pages)) {
          const window = await open(t, live, { css, features: [{ name: "prefers-color-scheme", value }] });
          const faint = await window.run(async () => {
            step(1);
            typed("0");
            await settled();
            // What has changed is marked by a pulse of colour, which is over after a moment.
            await new Promise((done) => setTimeout(done, 1000));
            return lettered()
              .filter((one) => !(one instanceof SVGElement) && contrast(one) < 4.5)
              .map(
                (one) =>
                  `${one.getRootNode().host.localName} ${one.localName}.${one.className} ${contrast(one).toFixed(2)}`,
              );
          });
          assert.deepEqual(faint, [], `${name} on a ${value} system`);
          await window.close();
        }
      }
    },
  },
  {
    row: 36,
    title: "Content overflows at 320 px",
    software: [],
    engines: all,
    async run(t) {
      for (const size of ["16px", "200%", "32px"]) {
        const window = await open(t, live, {
          css: `html{font-size:${size}} body{margin:8px} article p,article div{overflow-wrap:anywhere}`,
          width: 320,
          height: 640,
        });
        const seen = await window.run(async () => {
          // A window of an engine may not go down to this; its content does.
          document.documentElement.style.width = "320px";
          const room = Math.max(innerWidth, 320);
          step(1);
          await settled();
          field().blur();
          await settled();
          const wide = ours().filter(
            (one) => one.getBoundingClientRect().right > Math.max(320, document.documentElement.clientWidth) + 1,
          );
          return { over: document.scrollingElement.scrollWidth > room, wide: wide.map((one) => one.localName) };
        });
        assert.deepEqual(seen, { over: false, wide: [] }, size);
      }
    },
  },
  {
    row: 37,
    title: "Gauges vanish in forced colours and on paper",
    software: [],
    engines: ["chromium"],
    elsewhere: "only Chromium lets a test choose forced colours, and pictures of what is for paper",
    async run(t) {
      const window = await open(t, live, {
        own: true,
        before: () => undefined,
        css: "body{background:#fff;color:#000}",
      });
      const { page: tab } = window;
      const session = await tab.createCDPSession();
      const ink = async () => {
        const picture = await tab.screenshot({
          encoding: "base64",
          clip: await window.run(() => {
            const { x, y, width, height } = document.querySelector("mw-overdrive-gauge").getBoundingClientRect();
            return { x: x + scrollX, y: y + scrollY, width, height };
          }),
        });
        return window.run(async (data) => {
          const image = new Image();
          image.src = `data:image/png;base64,${data}`;
          await image.decode();
          const canvas = Object.assign(document.createElement("canvas"), { width: image.width, height: image.height });
          const context = canvas.getContext("2d");
          context.drawImage(image, 0, 0);
          const { data: pixels } = context.getImageData(0, 0, image.width, image.height);
          let count = 0;
          for (let n = 0; n < pixels.length; n += 4)
            if (
              Math.abs(pixels[n] - pixels[0]) +
                Math.abs(pixels[n + 1] - pixels[1]) +
                Math.abs(pixels[n + 2] - pixels[2]) >
              150
            )
              count++;
          return count / (pixels.length / 4);
        }, picture);
      };
      const plain = await ink();
      assert.ok(plain > 0.005, `plain ${plain}`);
      for (const [media, features] of [
        ["screen", [{ name: "forced-colors", value: "active" }]],
        [
          "screen",
          [
            { name: "forced-colors", value: "active" },
            { name: "prefers-color-scheme", value: "dark" },
          ],
        ],
        ["print", []],
      ]) {
        await session.send("Emulation.setEmulatedMedia", { media, features });
        await window.run(() => settled());
        const shown = await ink();
        assert.ok(shown > plain * 0.5, `${media} ${JSON.stringify(features)}: ${shown} of ${plain}`);
        const text = await window.run(() => reads(".sentence"));
        assert.equal(text, plainSentence);
      }
      // On paper: no keys, and whose values they are.
      await session.send("Emulation.setEmulatedMedia", { media: "print", features: [] });
      const paper = await window.run(async () => {
        step(1);
        await settled();
        return {
          // A button that looks like text is what it says: the name of a stage in the drawing.
          keys: inside()
            .filter((one) => one.localName === "button" && one.checkVisibility())
            .filter((one) => {
              const { backgroundColor, borderBottomColor, borderBottomWidth, textDecorationLine } =
                getComputedStyle(one);
              const isClear = (colour) => channels(colour)[3] === 0;
              const isLined = borderBottomWidth !== "0px" && !isClear(borderBottomColor);
              return isLined || textDecorationLine !== "none" || !isClear(backgroundColor) || !one.textContent.trim();
            })
            .map((one) => one.outerHTML.slice(0, 80)),
          said: reads("mw-edits"),
          // What stands there only on paper.
          note: [document.querySelector("mw-teeth").shadowRoot.querySelector("[data-was]")].map(
            (one) => `${one.dataset.was} ${getComputedStyle(one, "::after").content}`,
          )[0],
        };
      });
      assert.deepEqual(paper.keys, []);
      assert.match(paper.said, /reader’s version/);
      assert.match(paper.note, /^article 15 .*(article 15|attr\(data-was\))/);
    },
  },
  {
    title: "A page's own properties of common names stay its own",
    software: [],
    engines: all,
    async run(t) {
      const names = [
        "accent",
        "line",
        "paper",
        "ring",
        "fault",
        "second",
        "text",
        "primary",
        "color",
        "bg",
        "border",
        "spacing",
        "font",
        "page",
        "ink",
      ];
      const css = `:root{${names.map((name) => `--${name}:rgb(1,2,3)`).join(";")}}`;
      const window = await open(
        t,
        `<article><mw-build ${attributes}>${sentence}<mw-ratio-summary><b class="mine">44.30</b></mw-ratio-summary><p class="mine">Mine</p></mw-build></article>`,
        { css },
      );
      const seen = await window.run((list) => {
        const lost = [];
        for (const one of document.querySelectorAll("article *"))
          for (const name of list)
            if (getComputedStyle(one).getPropertyValue(`--${name}`).replace(/\s/g, "") !== "rgb(1,2,3)")
              lost.push(`${one.localName} --${name}`);
        const used = inside().filter((one) =>
          /rgb\(1, 2, 3\)/.test(getComputedStyle(one).color + getComputedStyle(one).backgroundColor),
        );
        return { lost, used: used.map((one) => one.className) };
      }, names);
      assert.deepEqual(seen, { lost: [], used: [] });
    },
  },
  {
    title: "Right to left, vertical writing, containment, transforms, columns",
    software: [],
    engines: all,
    async run(t) {
      const window = await open(t, live);
      for (const css of [
        "article{direction:rtl}",
        "article{writing-mode:vertical-rl}",
        "article{contain:strict;height:3000px}",
        "article{columns:2}",
        "article{transform:rotate(1deg);zoom:1.5}",
        "article{display:grid;grid-template-columns:1fr 1fr}",
        "article{display:flex;flex-wrap:wrap}",
        "article{container-type:inline-size;content-visibility:auto}",
      ]) {
        const seen = await window.run(async (text) => {
          const style = document.createElement("style");
          style.textContent = text;
          document.head.append(style);
          document.querySelector("article").dir = /rtl/.test(text) ? "rtl" : "";
          await settled();
          step(1);
          await settled();
          const changed = shown();
          step(-1);
          await settled();
          field().blur();
          const flat = ours().filter(
            (one) =>
              /^mw-(ratio|overdrive|working|change)/.test(one.localName) &&
              (one.getBoundingClientRect().width < 8 || one.getBoundingClientRect().height < 8),
          );
          style.remove();
          return { changed, back: shown(), flat: flat.map((one) => one.localName), wrong };
        }, css);
        assert.deepEqual(seen, { changed: "41.53", back: "44.30", flat: [], wrong: [] }, css);
      }
    },
  },
  {
    title: "The line height of the prose stays what it was",
    software: [],
    engines: all,
    async run(t) {
      const text = `<p class="plain">With 15 teeth the front turns once for every 44.30 turns of the motor.</p>`;
      const window = await open(t, `<article>${article}${text}</article>`, {
        css: "article{font:17px/1.6 serif;width:300px}",
      });
      const heights = await window.run(async () => {
        const height = (name) => document.querySelector(name).getBoundingClientRect().height;
        const still = [height(".sentence"), height(".plain")];
        field().focus();
        await settled();
        return [...still, height(".sentence")];
      });
      assert.ok(Math.abs(heights[0] - heights[1]) < 0.1, heights.join());
      assert.ok(Math.abs(heights[2] - heights[1]) < 0.1, "focus moves the text");
    },
  },
];
