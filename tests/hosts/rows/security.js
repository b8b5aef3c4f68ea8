// Hostile titles, labels, links and documents: nothing is executed, nothing polluted, nothing hangs.
import assert from "node:assert/strict";
import { article, attributeBuild, page, small } from "../lib/snippets.js";
import { blocks } from "../lib/elements.js";

const all = ["chromium", "firefox", "webkit"];
/** No step takes a second where nothing else is going on; a machine that is busy is not what is tried here. */
const hangs = 60_000;

/** Runs inside a page: thousands of hostile documents, attributes and links, one after another. Deterministic. */
async function attack(base, rounds, markup) {
  let state = 20261003;
  const random = (below) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
  window.struck = 0;
  const texts = [
    '<img src="data:," onerror="struck++">',
    "<script>struck++</script>",
    '"><svg onload=struck++>',
    "javascript:struck++",
    "${struck++}",
    "{{constructor.constructor('struck++')()}}",
    "</script><script>struck++</script>",
    "<!--?lit$0000$--><b onclick=struck++>",
    "__proto__",
    "constructor",
    "prototype",
    "toString",
    "hasOwnProperty",
    "\u202e\u0000\ud800",
    "&lt;img onerror=struck++&gt;",
    "x".repeat(2000),
    "[object Object]",
    "-1",
    "1e309",
    "NaN",
    "0/0",
    "../../etc",
    "%E0%A4%A",
  ];
  const odd = () => {
    const kind = random(10);
    if (kind < 5) return texts[random(texts.length)];
    return [
      null,
      true,
      -1,
      1e21,
      2 ** 53,
      0.1,
      [],
      {},
      [[]],
      { toString: "x" },
      ["__proto__"],
      JSON.parse('{"__proto__":{"struck":1}}'),
    ][random(12)];
  };
  const spoil = (node) => {
    if (node === null || typeof node !== "object") return odd();
    const keys = Object.keys(node);
    if (keys.length === 0 || random(12) === 0) return odd();
    const key = keys[random(keys.length)];
    const copy = Array.isArray(node) ? [...node] : { ...node };
    if (random(6) === 0 && !Array.isArray(copy))
      Object.defineProperty(copy, texts[random(texts.length)], {
        value: odd(),
        enumerable: true,
        configurable: true,
        writable: true,
      });
    else copy[key] = random(3) === 0 ? odd() : spoil(node[key]);
    return copy;
  };
  const labelled = (node) => {
    const copy = JSON.parse(JSON.stringify(node));
    const visit = (one) => {
      for (const key of Object.keys(one)) {
        if (key === "label" || key === "title") one[key] = texts[random(12)];
        else if (one[key] && typeof one[key] === "object") visit(one[key]);
      }
    };
    visit(copy);
    return copy;
  };
  const main = document.querySelector("main");
  main.innerHTML = markup;
  const build = main.querySelector("mw-build");
  build.id = "limpet";
  let drawn = 0;
  let longest = 0;
  const clean = Object.getOwnPropertyNames(Object.prototype).sort().join();
  for (let n = 0; n < rounds; n++) {
    const start = performance.now();
    const way = n % 5;
    if (way === 0) build.json = labelled(base);
    else if (way === 1) build.json = spoil(spoil(base));
    else if (way === 2) {
      const text = JSON.stringify(spoil(base));
      const at = random(text.length);
      build.json = text.slice(0, at) + texts[random(texts.length)] + text.slice(at + random(20));
    } else if (way === 3) {
      const code = Array.from({ length: 1 + random(60) }, () => "abcXYZ019-_%=&.~<\"'"[random(19)]).join("");
      try {
        history.replaceState(
          null,
          "",
          location.pathname +
            "#mw-limpet--" +
            (random(2) ? code : encodeURIComponent(texts[random(texts.length)].replace(/[\ud800-\udfff]/g, ""))),
        );
      } catch {
        // Some browsers count how often.
      }
      dispatchEvent(new HashChangeEvent("hashchange"));
    } else {
      build.json = base;
      const value = main.querySelector("mw-value");
      for (const name of ["of", "figure", "at", "group", "unit", "digits", "base"])
        if (random(3) === 0) value[name] = odd();
      const teeth = main.querySelector("mw-teeth");
      teeth.label = odd();
      if (random(2)) teeth.of = odd();
      if (random(4) === 0)
        build.setAttribute(["stages", "front", "rear", "target", "title"][random(5)], JSON.stringify(odd()));
    }
    if (n % 8 === 0) await new Promise((resolve) => setTimeout(resolve, 0));
    else await Promise.resolve();
    longest = Math.max(longest, performance.now() - start);
    if (main.querySelector("mw-ratio-summary")?.shadowRoot.querySelector("td")) drawn++;
  }
  build.json = base;
  const [value, teeth] = [main.querySelector("mw-value"), main.querySelector("mw-teeth")];
  for (const name of ["figure", "at", "group", "unit", "digits", "base", "build"]) value[name] = null;
  Object.assign(value, { of: "front" });
  Object.assign(teeth, { of: "spur-and-pinion.driver", label: null });
  build.store.reset();
  await settled();
  await new Promise((resolve) => setTimeout(resolve, 50));
  const strange = [...document.querySelectorAll("*")].flatMap((one) => [
    ...(one.shadowRoot?.querySelectorAll("script,img,iframe,[onclick],[onerror],[onload],a[href^='javascript:']") ??
      []),
  ]);
  return {
    struck: window.struck,
    polluted: Object.getOwnPropertyNames(Object.prototype).sort().join() !== clean || {}.struck !== undefined,
    strange: strange.length,
    drawn: drawn > rounds / 10,
    longest,
    last: [count(), shown()],
    wrong: [...new Set(wrong)],
  };
}

export const subject = "Hostile input";

export const rows = [
  {
    title: "Security: thousands of hostile documents, labels, links and attributes",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page("<main></main>"));
      const found = await window.run(
        attack,
        JSON.parse(small),
        t.engine === "chromium" ? 2000 : 700,
        attributeBuild + article.replace(attributeBuild, "") + blocks.replaceAll('build="whole"', ""),
      );
      assert.ok(found.longest < hangs, `a round took ${found.longest} ms`);
      delete found.longest;
      assert.deepEqual(found, {
        struck: 0,
        polluted: false,
        strange: 0,
        drawn: true,
        last: ["15", "44.30"],
        wrong: [],
      });
    },
  },
  {
    title: "Security: a megabyte of text, a hundred thousand levels, a very long address",
    software: [],
    engines: all,
    async run(t) {
      const window = await t.open(page("<main></main>"));
      const found = await window.run(
        async (base, markup) => {
          const main = document.querySelector("main");
          main.innerHTML = markup;
          const build = main.querySelector("mw-build");
          const times = [];
          const big = "x".repeat(1_000_000);
          const deep = "[".repeat(100_000);
          const stage = { kind: "pair", driver: 15, driven: 62 };
          for (const json of [
            { ...base, title: big },
            { ...base, [big]: 1 },
            { ...base, stages: [{ ...base.stages[0], label: big }] },
            { ...base, stages: Array.from({ length: 9000 }, (_, n) => ({ ...stage, id: `s${n}` })) },
            { ...base, stages: Array.from({ length: 20_000 }, (_, n) => ({ ...stage, id: `s${n}` })) },
            deep,
            deep + "]".repeat(100_000),
            `{"format":"meshwright-build/1","stages":${'{"a":'.repeat(50_000)}1${"}".repeat(50_000)}}`,
            big,
            `{"x-a":"${big}"}`,
            { ...base, stages: [{ ...base.stages[0], driver: "9".repeat(100_000) }] },
            { ...base, stages: [{ id: "a", kind: "published", value: `1.${"0".repeat(100_000)}1` }] },
            {
              ...base,
              stages: [
                {
                  id: "a",
                  kind: "planetary",
                  sun: 12,
                  ring: 60,
                  fixed: "ring",
                  input: "sun",
                  output: "carrier",
                  repeat: 1e9,
                },
              ],
            },
          ]) {
            const start = performance.now();
            build.json = json;
            await settled();
            times.push(Math.round(performance.now() - start));
          }
          for (const name of ["stages", "front", "title"]) {
            const start = performance.now();
            build.json = null;
            build.setAttribute(name, ": ".repeat(100_000) + "15 to ".repeat(50_000));
            await settled();
            times.push(Math.round(performance.now() - start));
          }
          for (const hash of [
            big.slice(0, 200_000),
            "=".repeat(50_000),
            "mw-limpet--".repeat(10_000),
            "mw-limpet=".repeat(10_000),
            ".mw-".repeat(50_000),
            "mw-1.1".repeat(50_000),
          ]) {
            const start = performance.now();
            history.replaceState(null, "", `${location.pathname}#mw-limpet--${hash}`);
            dispatchEvent(new HashChangeEvent("hashchange"));
            await settled();
            times.push(Math.round(performance.now() - start));
          }
          build.json = base;
          await settled();
          return { times, last: shown(), wrong };
        },
        JSON.parse(small),
        attributeBuild + article.replace(attributeBuild, ""),
      );
      assert.ok(Math.max(...found.times) < hangs, `ms: ${found.times.join(" ")}`);
      assert.deepEqual(found.wrong, []);
      assert.equal(found.last, "44.30");
    },
  },
];
