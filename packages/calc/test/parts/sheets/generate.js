// Writes the larger sheets, and knows what each of their rows means: a part is made up first, then written down as somebody
// would who keeps such a list. `node packages/calc/test/parts/sheets/generate.js` writes the files again.
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

/** Chance that is the same everywhere. */
function chanceFrom(seed) {
  let state = seed;
  const next = () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const below = (n) => Math.floor(next() * n);
  return { below, one: (list) => list[below(list.length)], in: (n) => below(n) === 0 };
}

const point = (hundredths) => `${Math.floor(hundredths / 100)}.${String(hundredths % 100).padStart(2, "0")}`;
const comma = (hundredths) => point(hundredths).replace(".", ",");
const two = (n) => String(n).padStart(2, "0");
const iso = ({ year, month, day }) => `${year}-${two(month)}-${two(day)}`;
const dayOf = (chance) => ({ year: 2026, month: 6 + chance.below(5), day: 1 + chance.below(28) });

/** Cells as lines of a file; cells that need it are quoted. */
const written = (rows, separator, end) =>
  rows
    .map((row) =>
      row
        .map((cell) => (cell.includes(separator) || /["\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell))
        .join(separator),
    )
    .join(end) + end;

const utf8 = (text) => Buffer.from(text, "utf8");
const marked = (text) => utf8(`\uFEFF${text}`);
const utf16be = (text) => Buffer.from(`\uFEFF${text}`, "utf16le").swap16();
const cp1252 = (text) =>
  Buffer.from(text.replaceAll("€", "\u0080").replaceAll("–", "\u0096").replaceAll("ø", "\u00f8"), "latin1");

/** A web shop's export: long titles, categories, stock in words, numbers that are repeated and oddly spelt. */
function shop() {
  const chance = chanceFrom(11);
  const rows = [
    [
      "SKU",
      "Title",
      "Category",
      "Tooth count",
      "Pitch",
      "Bore",
      "Price",
      "Currency",
      "Availability",
      "Brand",
      "Updated",
    ],
  ];
  const truth = [];
  const pitches = [
    ["M0.8", "m0.8"],
    ["M0.6", "m0.6"],
    ["Mod 0.5", "m0.5"],
    ["32DP", "32dp"],
    ["48DP", "48dp"],
    ["48 DP", "48dp"],
    ["module 1", "m1"],
  ];
  const bores = [
    ["5mm", "5 mm"],
    ["5 mm", "5 mm"],
    ["3.175mm", "3.175 mm"],
    ['1/8"', "1/8 in"],
    ["2mm", "2 mm"],
    ["8 mm", "8 mm"],
    ["2.3mm", "2.3 mm"],
  ];
  const stock = [
    ["In stock", "yes"],
    ["In stock", "yes"],
    ["Available", "yes"],
    ["Out of stock", "no"],
    ["Sold out", "no"],
  ];
  for (let n = 0; n < 220; n++) {
    const maker = chance.one(["Wrackline", "Ebbstone", "Dulse Precision", "Saltpan Cog Mill", "Zwirn, Tang & Co"]);
    const [pitch, truePitch] = chance.one(pitches);
    const [bore, trueBore] = chance.one(bores);
    const [words, available] = chance.one(stock);
    const amount = 150 + chance.below(3000);
    const day = dayOf(chance);
    const kind = chance.below(10);
    const teeth = kind < 5 ? 10 + chance.below(25) : 40 + chance.below(60);
    const sku = chance.in(9) ? "TBC" : `#${chance.one("PGX")}/${teeth}-${n % 40}`;
    const row = (title, category, count, ofPitch, is, more) => {
      rows.push([sku, title, category, count, ofPitch, bore, point(amount), "EUR", words, maker, iso(day)]);
      truth.push({ is, bore: trueBore, price: `${point(amount)} EUR`, checked: iso(day), available, maker, ...more });
    };
    if (kind < 4)
      row(`${maker} ${teeth}T steel pinion`, "Pinion gears", `${teeth}`, pitch, "pinion", { teeth, pitch: truePitch });
    else if (kind < 5)
      row(`Pinion ${teeth}T (hardened)`, "Pinions", `${teeth}T`, pitch, "pinion", { teeth, pitch: truePitch });
    else if (kind < 8)
      row(`${teeth} tooth spur gear, black`, "Spur gears", `${teeth}`, pitch, "spur", { teeth, pitch: truePitch });
    else if (kind < 9) row(`Ball bearing ${4 + (n % 9)}x${11 + (n % 9)}x4`, "Bearings", "", "", "other", {});
    else row(`Idler gear ${teeth}T`, "Idlers", `${teeth}`, pitch, "gear", { teeth, pitch: truePitch });
  }
  return { name: "web-shop.csv", bytes: utf8(written(rows, ",", "\n")), first: 2, truth };
}

/** A German store room: two lines above, a sum below, prices with and without a sign. */
function storeRoom() {
  const chance = chanceFrom(23);
  const rows = [
    ["Lagerliste Antrieb", "", "", "", "", "", "", "", ""],
    ["", "", "", "", "", "", "", "", ""],
    ["Nr.", "Bezeichnung", "Zähne", "Teilung", "Bohrung", "Breite (mm)", "Bestand", "Preis", "geprüft am"],
  ];
  const truth = [];
  let sum = 0;
  for (let n = 0; n < 200; n++) {
    const teeth = 10 + chance.below(80);
    const day = dayOf(chance);
    const amount = 100 + chance.below(400000 / (1 + chance.below(400)));
    sum += amount;
    const long =
      amount >= 100000 ? `${Math.floor(amount / 100000)}.${comma(amount % 100000).padStart(6, "0")}` : comma(amount);
    const price = chance.one([`${long} €`, `${long} €`, `€ ${long}`, `${long} EUR`]);
    const module = chance.one(["0,5", "0,6", "0,8", "1"]);
    const pitch = chance.one([`m ${module}`, `M${module}`, `Modul ${module}`, `m=${module}`]);
    const bore = chance.one(["5 mm", "5,0 mm", "ø5 mm", "8mm", "Ø 6 mm", "3,17 mm"]);
    const trueBore = `${/[\d,]+/.exec(bore)[0].replace(",", ".")} mm`;
    const width = chance.one(["5", "8,5", "11", "9"]);
    const owned = chance.below(5);
    const [name, is] = chance.one([
      ["Motorritzel", "pinion"],
      ["Ritzel, Stahl", "pinion"],
      ["Stirnrad", "gear"],
      ["Hauptzahnrad", "spur"],
      ["Zahnrad", "gear"],
      ["Kugellager", "other"],
      ["Kegelrad", "gear"],
    ]);
    const isGear = is !== "other";
    rows.push([
      `${100 + (n % 60)}/${n % 3}`,
      name,
      isGear ? chance.one([`${teeth}`, `${teeth}`, `${teeth} Z`, `z${teeth}`, `Z=${teeth}`]) : "-",
      isGear ? pitch : "-",
      bore,
      width,
      `${owned}`,
      price,
      chance.one([
        `${two(day.day)}.${two(day.month)}.${day.year}`,
        `${day.day}.${day.month}.${day.year}`,
        `${two(day.day)}.${two(day.month)}.${day.year % 100}`,
      ]),
    ]);
    truth.push({
      is,
      ...(isGear && { teeth, pitch: `m${module.replace(",", ".")}` }),
      ...(name === "Kegelrad" && { form: "bevel" }),
      bore: trueBore,
      width: `${width.replace(",", ".")} mm`,
      owned,
      price: `${point(amount)} EUR`,
      checked: iso(day),
    });
  }
  rows.push(["", "", "", "", "", "", "", "", ""], ["Summe", "", "", "", "", "", "", `${comma(sum)} €`, ""]);
  return {
    name: "store-room-german.csv",
    bytes: cp1252(written(rows, ";", "\r\n")),
    first: 4,
    truth,
    passed: [1, 205],
  };
}

/** A French club's stock, as a spreadsheet's text export of two bytes a letter. */
function club() {
  const chance = chanceFrom(37);
  const rows = [
    [
      "Désignation",
      "Dents",
      "Module",
      "Ø int. (mm)",
      "Fabricant",
      "Prix (€)",
      "Date du prix",
      "En stock",
      "Quantité possédée",
    ],
  ];
  const truth = [];
  const months = ["janv.", "févr.", "mars", "avril", "mai", "juin", "juil.", "août", "sept.", "oct.", "nov.", "déc."];
  for (let n = 0; n < 120; n++) {
    const teeth = 11 + chance.below(70);
    const [name, is] = chance.one([
      ["Pignon moteur", "pinion"],
      ["Pignon acier trempé", "pinion"],
      ["Roue dentée", "gear"],
      ["Engrenage intermédiaire", "gear"],
      ["Poulie crantée", "pulley"],
      ["Roulement à billes", "other"],
      ["Roue conique", "gear"],
    ]);
    const isGear = is === "pinion" || is === "gear";
    const module = chance.one(["0,5", "0,8", "1"]);
    const bore = chance.one(["2", "3,17", "5", "8"]);
    const amount = 100 + chance.below(2500);
    const day = dayOf(chance);
    const owned = chance.below(4);
    const has = !chance.in(3);
    rows.push([
      name,
      is === "other" ? "" : chance.one([`${teeth}`, `${teeth} dents`, `${teeth}`]),
      isGear ? module : "",
      bore,
      chance.one(["Atelier Bernique", "Marram et Fille"]),
      comma(amount),
      chance.one([`${day.day} ${months[day.month - 1]} ${day.year}`, `${two(day.day)}.${two(day.month)}.${day.year}`]),
      has ? "oui" : "non",
      `${owned}`,
    ]);
    truth.push({
      is,
      ...(is !== "other" && { teeth }),
      ...(name === "Roue conique" && { form: "bevel" }),
      ...(isGear && { pitch: `m${module.replace(",", ".")}` }),
      bore: `${bore.replace(",", ".")} mm`,
      price: `${point(amount)} EUR`,
      checked: iso(day),
      available: has ? "yes" : "no",
      owned,
      maker: rows.at(-1)[4],
    });
  }
  return { name: "club-french-utf16be.txt", bytes: utf16be(written(rows, "\t", "\r\n")), first: 2, truth };
}

/** A Japanese workshop: wide digits, yen in every form, dates with their characters. */
function workshop() {
  const chance = chanceFrom(41);
  const rows = [["品番", "品名", "歯数", "モジュール", "内径", "幅（mm）", "価格", "確認日", "在庫", "所有数"]];
  const truth = [];
  const wide = (n) => String(n).replace(/\d/g, (digit) => String.fromCharCode(0xff10 + Number(digit)));
  for (let n = 0; n < 120; n++) {
    const teeth = 10 + chance.below(70);
    const [name, is] = chance.one([
      ["ピニオンギヤ", "pinion"],
      ["スチールピニオン", "pinion"],
      ["スパーギヤ", "spur"],
      ["アイドラーギヤ", "gear"],
      ["平歯車", "gear"],
      ["ボールベアリング", "other"],
      ["ベアリング（ホイール用）", "other"],
    ]);
    const isGear = is !== "other";
    const module = chance.one(["0.5", "0.8", "1"]);
    const bore = chance.one(["2", "3.17", "5", "8"]);
    const width = chance.one(["5", "8.5", "11"]);
    const amount = 200 + chance.below(3000);
    const grouped =
      amount >= 1000 ? `${Math.floor(amount / 1000)},${String(amount % 1000).padStart(3, "0")}` : `${amount}`;
    const day = dayOf(chance);
    const owned = chance.below(4);
    const has = !chance.in(4);
    rows.push([
      `K${100 + n}`,
      name,
      isGear ? chance.one([`${teeth}`, `${teeth}T`, `${wide(teeth)}`, `${teeth}枚`]) : "",
      isGear ? chance.one([module, `M${module}`, `m${module}`]) : "",
      chance.one([`${bore}mm`, `φ${bore}mm`, `${bore}㎜`]),
      width,
      chance.one([`¥${grouped}`, `${grouped}円`, `￥${grouped}`]),
      chance.one([
        `${day.year}年${day.month}月${day.day}日`,
        `${day.year}/${two(day.month)}/${two(day.day)}`,
        `${day.year}.${day.month}.${day.day}`,
      ]),
      has ? "○" : "×",
      `${owned}`,
    ]);
    truth.push({
      is,
      ...(isGear && { teeth, pitch: `m${module}` }),
      bore: `${bore} mm`,
      width: `${width} mm`,
      price: `${amount} JPY`,
      checked: iso(day),
      available: has ? "yes" : "no",
      owned,
      number: `K${100 + n}`,
    });
  }
  return { name: "workshop-japanese.csv", bytes: marked(written(rows, ",", "\r\n")), first: 2, truth };
}

/** A box in inches: fractions and decimals by turns, month first, dollars, a handful of cells that nobody could read. */
function inches() {
  const chance = chanceFrom(53);
  const rows = [["#", "Part", "Teeth", "DP", "Bore (in)", "Face (in)", "Price (USD)", "Price date", "Where", "Own"]];
  const truth = [];
  for (let n = 0; n < 120; n++) {
    const teeth = 10 + chance.below(80);
    const [name, is] = chance.one([
      ["pinion", "pinion"],
      ["Pinion gear", "pinion"],
      ["Spur gear", "spur"],
      ["spur", "spur"],
      ["Idler", "gear"],
      ["Bushing, bronze", "bushing"],
      ["Ball bearing", "other"],
    ]);
    const isGear = is !== "other" && is !== "bushing";
    const pitch = chance.one(["48", "32", "64", "24"]);
    const bore = chance.one(["1/8", ".125", "3/16", "0.250", "1/4", '5/16"']);
    const trueBore = `${bore.replace('"', "").replace(/^\./, "0.")} in`;
    const face = chance.one([".25", "1/4", ".1875", "5/16"]);
    const amount = 150 + chance.below(1500);
    const day = dayOf(chance);
    const owned = chance.below(6);
    const unsure = chance.in(40);
    rows.push([
      `${n + 1}`,
      name,
      isGear ? (unsure ? `${teeth}?` : chance.one([`${teeth}`, `${teeth}T`, `${teeth}t`, `${teeth}.0`])) : "",
      isGear ? pitch : "",
      bore,
      face,
      chance.one([point(amount), `$${point(amount)}`]),
      chance.one([`${day.month}/${day.day}/${day.year}`, `${two(day.month)}/${two(day.day)}/${day.year}`]),
      chance.one(["the pier kiosk", "Foreshore post orders", "swap meet, row 7"]),
      owned ? `${owned}` : "",
    ]);
    truth.push({
      is: is === "bushing" ? "other" : is,
      ...(isGear && { teeth, pitch: `${pitch}dp` }),
      bore: trueBore,
      width: `${face.replace(/^\./, "0.")} in`,
      price: `${point(amount)} USD`,
      checked: iso(day),
      ...(owned && { owned }),
      source: rows.at(-1)[8],
      ...(unsure && isGear && { asks: "teeth" }),
      ...(is === "bushing" && { asks: "is" }),
    });
  }
  return { name: "box-in-inches.csv", bytes: utf8(written(rows, ",", "\n")), first: 2, truth };
}

/** What a drive needs beside gears: sets, boxes, belts, tyres, sleeves, plates. */
function drives() {
  const chance = chanceFrom(67);
  const rows = [
    [
      "Code",
      "What",
      "Teeth",
      "Ratio",
      "Module",
      "Belt pitch",
      "Bore",
      "OD",
      "Width (mm)",
      "Holes",
      "Price",
      "Pack size",
      "Own",
      "Status",
    ],
  ];
  const truth = [];
  for (let n = 0; n < 160; n++) {
    const amount = 200 + chance.below(5000);
    const code = `D${two(n % 50)}${chance.one(["", "-a", " B"])}`;
    const low = 9 + chance.below(12);
    const high = 30 + chance.below(20);
    const pack = chance.in(3) ? 2 + chance.below(3) : undefined;
    const [owned, status] = chance.one([
      [1, "fitted"],
      [2, "spare"],
      [undefined, "ordered"],
      [undefined, ""],
      [undefined, ""],
    ]);
    const cells = { code, price: chance.one([`£${point(amount)}`, `${point(amount)} GBP`, `GBP ${point(amount)}`]) };
    const part = {
      number: code,
      price: `${point(amount)} GBP`,
      ...(pack && { pack }),
      ...(owned && { owned }),
      ...(status && { status }),
    };
    const fill = (more, real) => {
      const all = { ...cells, ...more };
      rows.push([
        all.code,
        all.what,
        all.teeth ?? "",
        all.ratio ?? "",
        all.module ?? "",
        all.pitch ?? "",
        all.bore ?? "",
        all.od ?? "",
        all.width ?? "",
        all.holes ?? "",
        all.price,
        pack ? `${pack}` : "",
        owned ? `${owned}` : "",
        status,
      ]);
      truth.push({ ...part, ...real });
    };
    const kind = chance.below(10);
    if (kind === 0)
      fill(
        {
          what: chance.one(["Ring and pinion", "Ring & pinion set", "Crown wheel and pinion"]),
          teeth: chance.one([
            `${low}/${high}`,
            `${low} to ${high}`,
            `${low}:${high}`,
            `${low}T/${high}T`,
            `${low}-${high}`,
          ]),
          bore: "8 mm",
        },
        { is: "set", driver: low, driven: high, bore: "8 mm" },
      );
    else if (kind === 1)
      fill(
        {
          what: chance.one(["Hub gear set", "Hub reduction", "Portal gears"]),
          teeth: `${low}/${low + 7}`,
          module: "1",
        },
        { is: "hub", driver: low, driven: low + 7, pitch: "m1" },
      );
    else if (kind === 2) {
      const value = chance.one([
        `2.${10 + chance.below(80)}`,
        `${3 + chance.below(40)}:1`,
        `5.${1 + chance.below(8)}:1`,
      ]);
      fill(
        {
          what: chance.one(["Gearbox", "Gear box", "Planetary gearbox", "Gearmotor", "Transfer case"]),
          ratio: value,
          bore: "5 mm",
        },
        { is: "gearbox", value: /^\d+:1$/.test(value) ? value : value.replace(":1", ""), bore: "5 mm" },
      );
    } else if (kind === 3)
      fill(
        {
          what: chance.one(["Timing belt", "Toothed belt", "Belt"]),
          teeth: `${80 + low}`,
          pitch: chance.one(["2 mm", "2mm", "3 mm"]),
          width: "6",
        },
        { is: "belt", teeth: 80 + low, width: "6 mm" },
      );
    else if (kind === 4)
      fill(
        {
          what: chance.one(["Belt pulley", "Pulley", "Timing pulley", "Sprocket"]),
          teeth: chance.one([`${low}`, `${low}T`]),
          pitch: "2 mm",
          bore: "5 mm",
        },
        { is: "pulley", teeth: low, beltPitch: "2 mm", bore: "5 mm" },
      );
    else if (kind === 5)
      fill(
        { what: chance.one(["Tyre", "Tire", "Paddle tyre", "Wheel and tyre"]), od: `${90 + high} mm`, width: "52" },
        { is: "wheel", diameter: `${90 + high} mm`, width: "52 mm" },
      );
    else if (kind === 6)
      fill(
        {
          what: chance.one(["Sleeve", "Adapter sleeve", "Reducing sleeve"]),
          bore: chance.one(["1/8 in", '1/8"']),
          od: "5 mm",
        },
        { is: "sleeve", bore: "1/8 in", outside: "5 mm" },
      );
    else if (kind === 7)
      fill(
        {
          what: chance.one(["Adapter plate", "Hole adapter plate"]),
          holes: chance.one(["3x20 mm; 4x24 mm", "3 x 20 mm; 4 x 24 mm", "3×20mm;4×24mm"]),
          width: "1.5",
        },
        { is: "plate", circles: "3 x 20 mm; 4 x 24 mm", width: "1.5 mm" },
      );
    else if (kind === 8)
      fill(
        { what: chance.one(["Planetary set", "Planetary gear set"]), teeth: `${low}/${low * 3}`, module: "0.5" },
        { is: "planetary", driver: low, driven: low * 3, pitch: "m0.5" },
      );
    else
      fill(
        {
          what: chance.one([
            "Battery",
            "Motor",
            "Motor mount",
            "Wheel nuts",
            "Gear oil",
            "Belt tensioner",
            "Wheel bearing",
            "Pinion puller",
          ]),
        },
        {},
      );
    const last = truth.at(-1);
    last.is ??= { Battery: "battery", Motor: "motor" }[rows.at(-1)[1]] ?? "other";
    if (last.is === "belt") last.beltPitch = rows.at(-1)[5].replace(/ ?mm/, " mm");
  }
  return { name: "drive-parts.csv", bytes: utf8(written(rows, ",", "\n")), first: 2, truth };
}

/** A Spanish list by tabs: numbers with a comma, dates day first, a quarter without a price. */
function list() {
  const chance = chanceFrom(79);
  const rows = [
    [
      "Código",
      "Descripción",
      "Nº de dientes",
      "Módulo",
      "Agujero (mm)",
      "Ancho (mm)",
      "Precio",
      "Moneda",
      "Fecha",
      "Proveedor",
      "Estado",
    ],
  ];
  const truth = [];
  for (let n = 0; n < 100; n++) {
    const teeth = 10 + chance.below(70);
    const [name, is] = chance.one([
      ["Piñón", "pinion"],
      ["Piñón de motor", "pinion"],
      ["Rueda dentada", "gear"],
      ["Engranaje", "gear"],
      ["Corona y piñón", "set"],
      ["Rodamiento", "other"],
      ["Polea", "pulley"],
    ]);
    const isGear = is === "pinion" || is === "gear";
    const module = chance.one(["0,5", "0,8", "1,0"]);
    const bore = chance.one(["2", "3,17", "5", "8,0"]);
    const amount = 100 + chance.below(2500);
    const hasPrice = !chance.in(4);
    const day = dayOf(chance);
    const [state, status] = chance.one([
      ["pedido", "ordered"],
      ["montado", "fitted"],
      ["repuesto", "spare"],
      ["", ""],
      ["", ""],
    ]);
    const high = teeth + 11 + chance.below(30);
    rows.push([
      `E-${n}`,
      name,
      is === "set" ? `${teeth}/${high}` : is === "other" ? "" : `${teeth}`,
      isGear ? module : "",
      bore,
      "10",
      hasPrice ? comma(amount) : "",
      hasPrice ? "EUR" : "",
      hasPrice ? `${two(day.day)}/${two(day.month)}/${day.year}` : "",
      "Taller Percebe",
      state,
    ]);
    truth.push({
      number: `E-${n}`,
      is,
      ...(is === "set" ? { driver: teeth, driven: high } : is !== "other" && { teeth }),
      ...(isGear && { pitch: `m${module.replace(",", ".")}` }),
      bore: `${bore.replace(",", ".")} mm`,
      width: "10 mm",
      ...(hasPrice && { price: `${point(amount)} EUR`, checked: iso(day) }),
      ...(status && { status }),
      source: "Taller Percebe",
    });
  }
  return { name: "list-spanish.tsv", bytes: utf8(written(rows, "\t", "\n")), first: 2, truth };
}

/** `first` is the line of the first row; every row takes one line. */
export const generated = [shop(), storeRoom(), club(), workshop(), inches(), drives(), list()];

if (process.argv[1] === fileURLToPath(import.meta.url))
  for (const { name, bytes } of generated) writeFileSync(new URL(name, import.meta.url), bytes);
