// Limpet, a beach tractor of our own world. Front: 62/15 · 45/18 · 38/13 · 22/15 = 25916/585 = 44.30; rear: 62/15 · 45/18 ·
// 35/12 · 23/16 = 24955/576 = 43.32; the front rolls 1.06 % farther.
export const attributes =
  'stages="Spur and pinion: 15 to 62; Gear row: 18 to 31 to 45" front="Ring: 13 to 38; Hub: 15 to 22" rear="Ring: 12 to 35; Hub: 16 to 23" front-wheel="124 mm" rear-wheel="120 mm" target="38 to 46"';

export const build = `<mw-build id="b" ${attributes}></mw-build>`;

/** A page in English, with line ends of two characters. */
export const page = (body: string, lang = "en"): string =>
  `<!doctype html>\r\n<html lang="${lang}"><body>\r\n${build}\r\n${body}\r\n</body></html>\r\n`;

/** A post in Markdown or MDX. */
export const post = (body: string): string => `# Limpet\n\n${build}\n\n${body}\n`;

/** A build as JSON, with an alternative. */
export const document = JSON.stringify({
  format: "meshwright-build/1",
  stages: [{ id: "spur", label: "Spur", kind: "pair", driver: 15, driven: 60 }],
  outputs: [
    {
      id: "front",
      label: "Front",
      stages: [{ id: "front-ring", label: "Ring", kind: "pair", driver: 10, driven: 40 }],
      wheel: { diameter: "100 mm" },
    },
    {
      id: "rear",
      label: "Rear",
      stages: [{ id: "rear-ring", label: "Ring", kind: "pair", driver: 10, driven: 39 }],
      wheel: { diameter: "100 mm" },
    },
  ],
  alternatives: [{ id: "deeper", label: "Deeper", changes: { "spur.driver": 12 } }],
});
