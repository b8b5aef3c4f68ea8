import { assert } from "@esm-bundle/chai";
import { hashKey, linkWith, readHash, seekAnchor, writeHash, writeNow } from "./index.js";

const here = (): string => location.pathname + location.search;
// WebKit takes a hundred writes in ten seconds.
const goTo = (address: string): void => {
  if (new URL(address, location.href).href !== location.href) history.replaceState(null, "", address);
};
const go = (hash: string): void => goTo(here() + hash);
const later = (milliseconds: number) => new Promise((done) => setTimeout(done, milliseconds));

describe("what the address says", () => {
  let notes: HTMLElement;
  const start = here();

  beforeEach(() => {
    go("");
    notes = document.createElement("h2");
    notes.id = "notes";
    document.body.append(notes);
  });
  afterEach(() => {
    writeNow();
    notes.remove();
    goTo(start);
  });

  it("names a build by what a selector may hold, so that no two ids are one", () => {
    const ids = [
      "limpet",
      "a-b",
      "a--b",
      "-a",
      "a-",
      "my_build",
      "my_5f_build",
      "Größe",
      "a b",
      "a.b",
      "2",
      "a_2",
      "\u{1f980}",
      "",
    ];
    const keys = ids.flatMap((id) => [hashKey(id, 1), hashKey(id, 2)]);
    assert.equal(new Set(keys).size, keys.length);
    assert.deepEqual([hashKey("limpet", 1), hashKey("limpet", 2)], ["limpet", "limpet_2"]);
    for (const key of keys) {
      assert.match(key, /^[\w-]+$/);
      assert.notInclude(`${key}--`.slice(0, -1), "--");
      go(`#notes.mw-other--Xy.mw-${key}--1a_-Z`);
      assert.equal(readHash(key), "1a_-Z", key);
      assert.isNull(document.querySelector(location.hash), key);
    }
  });

  it("is a selector with one build or more, with an anchor or without", async () => {
    for (const hash of ["", "#notes", "#top"]) {
      go(hash);
      writeHash("limpet", () => "2a-_b");
      writeHash("plover", () => "3Z");
      writeNow();
      assert.equal(location.hash, `${hash ? `${hash}.` : "#"}mw-limpet--2a-_b.mw-plover--3Z`);
      assert.isNull(document.querySelector(location.hash));
      assert.deepEqual([readHash("limpet"), readHash("plover"), readHash("other")], ["2a-_b", "3Z", undefined]);
      writeHash("limpet", () => undefined);
      writeHash("plover", () => undefined);
      writeNow();
      assert.equal(location.hash, hash);
    }
  });

  it("keeps the sign by which the author is known", () => {
    go("#mw-author");
    writeHash("limpet", () => "Ab");
    writeNow();
    assert.equal(location.hash, "#mw-author.mw-limpet--Ab");
  });

  it("reads what addresses had before, and writes it anew", () => {
    go("#mw-limpet=Ab&mw-limpet.2=Cd&mw-gr%C3%B6%C3%9Fe=Ef");
    assert.deepEqual([readHash("limpet"), readHash("limpet_2"), readHash(hashKey("größe", 1))], ["Ab", "Cd", "Ef"]);
    writeHash("limpet", () => "Xy");
    writeNow();
    assert.equal(location.hash, `#mw-limpet_2--Cd.mw-${hashKey("größe", 1)}--Ef.mw-limpet--Xy`);
  });

  it("leaves a router's address alone, and puts a link's part behind its route", () => {
    for (const route of ["#/posts/7?tab=notes", "#!/posts/7", "#about", "#tab=2", "#a/b"]) {
      go(route);
      writeHash("limpet", () => "Ab");
      writeNow();
      assert.equal(location.hash, route);
      const link = linkWith(location.href, "limpet", "Ab");
      assert.include(link, `${route}${route.includes("?") ? "&" : "?"}mw-limpet=Ab`);
      go(new URL(link).hash);
      assert.equal(readHash("limpet"), "Ab");
      assert.equal(linkWith(location.href, "limpet", ""), new URL(route, location.href).href);
    }
    go("#/p?mw-limpet=Ab&x=1");
    assert.equal(new URL(linkWith(location.href, "limpet", "Cd")).hash, "#/p?x=1&mw-limpet=Cd");
  });

  it("puts a part behind the anchor of another page's address", () => {
    assert.equal(
      linkWith("https://shore.example/post#part-2", "limpet", "Ab"),
      "https://shore.example/post#part-2.mw-limpet--Ab",
    );
    assert.equal(linkWith("https://shore.example/post", "limpet", "Ab"), "https://shore.example/post#mw-limpet--Ab");
  });

  it("is never written under another place: a path, a query, a route", async () => {
    for (const next of [`${here()}-2`, `${location.pathname}?other`, "#/elsewhere", "#contact"]) {
      go("");
      writeHash("limpet", () => "Ab");
      history.pushState(null, "", next);
      const { href } = location;
      writeNow();
      assert.equal(location.href, href);
      goTo(start);
    }
    // Nor under a route of a page whose routes are words.
    go("#about");
    writeHash("limpet", () => "Ab");
    go("#contact");
    writeNow();
    assert.equal(location.hash, "#contact");
  });

  it("is written at once when the page is left, hidden, or pressed elsewhere, and behind an anchor that was gone to", async () => {
    const signs: (() => void)[] = [
      () => dispatchEvent(new Event("pagehide")),
      () => notes.click(),
      () => {
        Object.defineProperty(document, "visibilityState", { value: "hidden", configurable: true });
        document.dispatchEvent(new Event("visibilitychange"));
        delete (document as unknown as Record<string, unknown>)["visibilityState"];
      },
    ];
    for (const sign of signs) {
      go("");
      writeHash("limpet", () => "Ab");
      assert.equal(location.hash, "");
      sign();
      assert.equal(location.hash, "#mw-limpet--Ab");
    }
    go("");
    writeHash("limpet", () => "Ab");
    go("#notes");
    writeNow();
    assert.equal(location.hash, "#notes.mw-limpet--Ab");
  });

  it("is asked for once, when things have settled", async () => {
    let asked = 0;
    for (let n = 0; n < 5; n++) writeHash("limpet", () => (asked++, "Ab"));
    await later(600);
    assert.equal(asked, 1);
    assert.equal(location.hash, "#mw-limpet--Ab");
  });

  it("is tried again where the browser has refused, and given up in the end", async () => {
    const { replaceState } = History.prototype;
    let refused = 0;
    History.prototype.replaceState = () => {
      refused++;
      throw new DOMException("too often", "SecurityError");
    };
    try {
      writeHash("limpet", () => "Ab");
      writeNow();
      assert.equal(refused, 1);
    } finally {
      History.prototype.replaceState = replaceState;
    }
    assert.equal(location.hash, "");
    await later(1900);
    assert.equal(location.hash, "#mw-limpet--Ab");
  });

  it("goes to the anchor, once", () => {
    notes.style.marginTop = "5000px";
    go("#notes.mw-limpet--Ab");
    seekAnchor();
    const reached = scrollY;
    assert.isAbove(reached, 1000);
    scrollTo(0, 0);
    go("#notes.mw-limpet--Cd");
    seekAnchor();
    assert.equal(scrollY, 0);
  });
});
