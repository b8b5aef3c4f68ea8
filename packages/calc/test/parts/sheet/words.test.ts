import { describe, expect, it } from "vitest";
import type { PartKind } from "../../../src/stages/index.js";
import { questionText } from "../../../src/parts/index.js";
import { asked, sheet } from "./make.js";

/** What a name is taken for where nothing else says it, and whether it is asked about. */
function kindOf(name: string): string {
  const { parts, questions } = sheet(["Name|Maker", `${name}|Dulse`]);
  const isAsked = questions.some(({ field }) => field === "is");
  return isAsked ? `${parts[0]!.is}?` : parts[0]!.is;
}

const kinds: Readonly<Record<PartKind | `${PartKind}?`, string>> = {
  pinion:
    "pinion|Pinion gear 15T|motor pinion|16T steel pinion|Pinion, hardened, 5 mm bore|Pinion 15T 5mm shaft|pinion for spur 62T|Ritzel|Motorritzel Stahl|Stahlritzel|Ritzel für Hauptzahnrad|pignon moteur|Pignon acier|piñón de motor|Piñón templado|ピニオン|スチールピニオンギヤ|بنيون",
  spur: "spur|Spur gear|main gear|62T spur gear (black)|Hauptzahnrad|couronne|corona|スパーギア",
  gear: "gear|spur wheel|spur wheels|Idler|idler gear|ring gear|crown wheel|worm wheel|Worm gear 30|bevel gear|cog|row gear|Zahnrad|Zahnräder|Stirnrad|Kegelrad|Schneckenrad|Zwischenrad|Tellerrad|roue dentée|roue conique|engrenage|rueda dentada|engranaje|歯車|アイドラーギア|ウォームホイール|ترس|المسنن|عجلة مسننة",
  set: "ring and pinion 13/38|Ring & pinion set 13/38|r+p 13/38|Crown wheel and pinion 13/38|gear set 13/38|worm and wheel 1/30|bevel gear set 13/38|Tellerrad und Ritzel 13/38|Kegelradsatz 13/38|couronne et pignon 13/38|corona y piñón 13/38|リング&ピニオン 13/38",
  hub: "hub gear set 15/22|hub gears 15/22|hub reduction 15/22|portal gears 15/22|Portalsatz 15/22|ハブギア 15/22",
  gearbox:
    "gearbox|gear box|gearmotor 27:1|Geared motor 27:1|gear motor|motor with gearbox 27:1|Planetary gearbox 2.61|transfer case|Getriebe|Getriebemotor 27:1|Planetengetriebe|réducteur|motoréducteur 27:1|boîte de vitesses|motorreductor 27:1|caja de cambios|減速機|ギヤードモーター|علبة تروس",
  worm: "worm|Worm, 2 starts|Schnecke eingängig|vis sans fin|tornillo sin fin|ウォーム",
  planetary: "planetary set 12/60|epicyclic gear set 12/60|Planetensatz 12/60|train épicycloïdal 12/60",
  belt: "belt|timing belt 90|chain|roller chain|Zahnriemen|Kette|courroie crantée|correa dentada|タイミングベルト|سير",
  pulley:
    "pulley|idler pulley|Idler pulley 20T|belt pulley|sprocket|chain wheel|Riemenscheibe|Zahnriemenscheibe 20 Z|Kettenrad|poulie crantée|polea|プーリー|スプロケット|بكرة مسننة",
  wheel:
    "wheel|tyre|Tire 4.5|wheel and tyre|tyre set (4)|Paddle tyre 124|Reifen|Rad|Räder|pneu|roue|neumático|rueda|タイヤ|ホイール|عجلة|إطار",
  sleeve:
    "sleeve|adapter sleeve|Reducing sleeve 1/8 to 5 mm|shaft adapter|Reduzierhülse|Hülse|douille de réduction|manguito|スリーブ|جلبة",
  plate: "adapter plate|Adapter plate 20 to 24|Adapterplatte|plaque d'adaptation|placa adaptadora|アダプタープレート",
  motor: "motor|Brushless motor 1850|Elektromotor|moteur|モーター|محرك",
  battery: "battery|LiPo 3S|Akku|batterie|batería|バッテリー|بطارية",
  other:
    "bearing|Bearing 5x11x4|wheel bearing|Wheel bearings (10)|ball bearing|bearing for ring gear|Kugellager|Radlager|Lager für Rad|roulement de roue|rodamiento de rueda|ベアリング|ホイールベアリング|ベアリング（ホイール用）|محمل عجلة|gear puller|pinion puller|tyre glue|wheel nut|motor mount|belt tensioner|gear oil|flywheel|Schwungrad|spring|piston ring|O-ring|gear shaft|Zahnradabzieher|wheel hub|battery charger|screws M3|その他|spur gear cover|pulley bolt|Getriebeöl|vis M3|tornillo M3",
  "gear?": "ring",
  "hub?": "hub|Nabe",
  "set?": "set|pinion set",
  "gearbox?": "reduction",
  "sleeve?": "bush|Bushing, bronze|Buchse|casquillo",
  "plate?": "plate|motor plate",
  "other?": "thingummy|TERN-15|???a|Tern 15 light|12",
  "pinion?": "pin|Pinion wrackline",
  "spur?": "Spur Sandhopper",
  "worm?": "Worm crane",
  "planetary?": "Planetary Urchin",
  "belt?": "Belt thing",
  "pulley?": "pulley doodah",
  "wheel?": "wheel doodah",
  "motor?": "motor doodah",
  "battery?": "cell",
};

describe("what a part is", () => {
  const all = Object.entries(kinds).flatMap(([kind, names]) => names.split("|").map((name) => [name, kind] as const));
  it.each(all)("%s: %s", (name, kind) => {
    expect(kindOf(name)).toBe(kind);
  });

  it.each([
    ["Gears", "Motor pinion 15T", "pinion"],
    ["Gear", "Bearing 5x11x4", "gear"],
    ["Bearing", "Pinion bearing", "other"],
    ["Drivetrain", "Steel spur 62T", "spur"],
    ["Spare part", "Tyre 124", "wheel"],
    ["spur", "Pinion-coloured 62", "spur"],
  ])("by its kind %s and its name %s", (kind, name, expected) => {
    expect(sheet(["Name|Kind|Teeth", `${name}|${kind}|20`]).parts[0]!.is).toBe(expected);
  });

  it.each([
    ["Steel pinion 15T M0.8", { teeth: 15, module: "0.8" }],
    ["16T pinion, 48 pitch", { teeth: 16, diametralPitch: "48" }],
    ["Pinion 48DP 18T", { teeth: 18, diametralPitch: "48" }],
    ["Ritzel 13 Zähne Modul 0,8", { teeth: 13, module: "0.8" }],
    ["Pignon 13 dents", { teeth: 13 }],
    ["Pinion 15T for 62T spur", { teeth: 15 }],
    ['Pinion 15T, 0.8Mod, 1/8" bore', { teeth: 15, module: "0.8", bore: "1/8 in" }],
    ["Stirnrad z45 m0,8, Bohrung 3,17 mm", { teeth: 45, module: "0.8", bore: "3.17 mm" }],
    ["Pulley 20T 6mm belt 5mm bore", { teeth: 20, bore: "5 mm" }],
    ["Stirnrad Modul 1 - 30 Zähne", { teeth: 30, module: "1" }],
    ["Spur 0.8 module 17 tooth", { teeth: 17, module: "0.8" }],
    ["Wormwheel 30T m1", { teeth: 30, module: "1", form: "worm" }],
    ["Ring and pinion 13/38, m0.8, hardened", { driver: 13, driven: 38, module: "0.8" }],
    ["Worm + wheel 2/40", { driver: 2, driven: 40 }],
    ["Pinion 15T with M3 screw", { teeth: 15 }],
    ["Pinion 15T M3", { teeth: 15 }],
    ["ring and pinion 13/38", { driver: 13, driven: 38 }],
    ["Ring and pinion 11T to 36T", { driver: 11, driven: 36 }],
    ["Pinion, 15T, 0.8M, 5mm", { teeth: 15, module: "0.8" }],
    ["48P 81T spur", { teeth: 81, diametralPitch: "48" }],
    ["gearmotor 27:1", { value: "27:1" }],
    ["Getriebe 2,61:1", { value: "2.61:1" }],
    ["Bearing 5x11x4", {}],
  ])("says more than that: %s", (name, expected) => {
    const { parts, questions } = sheet(["Name|Maker", `${name}|Dulse`]);
    expect(questions).toEqual([]);
    expect(parts[0]).toMatchObject(expected);
    expect(Object.keys(parts[0]!).sort()).toEqual(["id", "is", "maker", "name", ...Object.keys(expected)].sort());
  });

  it("is doubted where a part that is no gear by its words has teeth or a ratio", () => {
    const read = sheet([
      "Name|Teeth|Ratio",
      "Clutch bell|15|",
      "Roue|48|",
      "Rad||",
      "Bearing|20|",
      "Diff gear 12T/20T||",
      "Worm box||30:1",
      "デフギア|38/13|",
    ]);
    expect(read.parts.map(({ is }) => is)).toEqual(["other", "gear", "wheel", "other", "gear", "gearbox", "gear"]);
    expect(asked(read)).toEqual([
      "kind-unsure of is = other",
      "kind-unsure of is = gear",
      "missing of diameter",
      "kind-unsure of is = other",
      "missing of teeth",
      "kind-unsure of is = gearbox",
      "pair-for-one of teeth",
    ]);
  });

  it.each([
    "Pinion kit 12-16T",
    "Diff gear 12T/20T",
    "Pinion 48-15T",
    "Gear 12T 20T",
    "Pinions 12, 13 and 14T",
    "Pinion 13 & 14T",
    "Ritzel 13, 14 und 15 Zähne",
    "Pinion 13,5T",
  ])("says no count that is one of several: %s", (name) => {
    const read = sheet(["Name|Maker", `${name}|Dulse`]);
    expect(read.parts[0]).not.toHaveProperty("teeth");
    expect(asked(read)).toEqual(["missing of teeth"]);
  });

  it.each(["Hub gears 12-30-48", "Hub reduction 1:4", "Planetary set 12/20/60", "Ring and pinion 12/24/60"])(
    "says no pair where there are three counts, or a ratio: %s",
    (name) => {
      const read = sheet(["Name|Maker", `${name}|Dulse`]);
      expect(Object.keys(read.parts[0]!)).not.toEqual(expect.arrayContaining(["driver"]));
      expect(asked(read)).toEqual(["missing of teeth"]);
    },
  );

  it("of a planetary set with its planets says sun and ring, and asks", () => {
    const read = sheet(["Name|Maker", "Planetary set 12/24/60|Dulse", "Train planétaire 60-18-24|Dulse"]);
    expect(read.parts.map(({ driver, driven }) => [driver, driven])).toEqual([
      [12, 60],
      [24, 60],
    ]);
    expect(asked(read)).toEqual(["count-unclear of teeth = 12/60", "count-unclear of teeth = 24/60"]);
  });

  it.each(["Wheel 62T", "wheel, 62 teeth, for the Limpet", "Roue 62 dents", "Rad 62Z", "rueda 62 dientes"])(
    "is a gear, and asked about, where a wheel has teeth: %s",
    (name) => {
      const read = sheet(["Name|Maker", `"${name}"|Dulse`.replaceAll('"', "")]);
      expect(read.parts[0]).toMatchObject({ is: "gear", teeth: 62 });
      expect(asked(read)).toEqual(["kind-unsure of is = gear"]);
    },
  );

  it("is a gear, and asked about, where nothing says more than teeth and their pitch", () => {
    const read = sheet(["Code|Teeth|Module", "A|17|0.8", "B|18|", "C|x|0.8"]);
    expect(read.parts.map(({ is }) => is)).toEqual(["gear", "other", "other"]);
    expect(asked(read)).toEqual([
      "kind-unknown of is = gear",
      "kind-unknown of is",
      "kind-unknown of is",
      "count-unclear of teeth",
    ]);
    expect(sheet(["Name|Maker", "17T 0.8mod|Dulse"]).parts[0]).toMatchObject({ is: "gear", teeth: 17, module: "0.8" });
  });

  it("is a set where driver and driven gear have a column each", () => {
    const read = sheet(["Name|z1|z2|Module", "Ritzel/Rad|13|38|0.8", "A 40|13|40|0.8"]);
    expect(read.parts.map(({ is, driver, driven }) => [is, driver, driven])).toEqual([
      ["set", 13, 38],
      ["set", 13, 40],
    ]);
    expect(asked(read)).toEqual(["kind-unsure of is = set", "kind-unsure of is = set"]);
    expect(questionText(sheet(["Code|z1|z2", "A|13|38"]).questions[0]!)).toBe("What is this part? Taken for set.");
  });

  it("is guessed at a bare number, with a question", () => {
    const { parts, questions } = sheet([
      "Name|Maker",
      "Pinion 15|Dulse",
      "Gearbox 2.61|Dulse",
      "Tyre 124|Dulse",
      "Pinion 15 20|Dulse",
    ]);
    expect(parts.map(({ teeth, diameter, value }) => teeth ?? diameter ?? value)).toEqual([
      15,
      "2.61",
      "124 mm",
      undefined,
    ]);
    expect(questions.filter(({ field }) => field !== "is").map(({ line, code }) => `${line} ${code}`)).toEqual([
      "2 from-name",
      "3 from-name",
      "4 from-name",
      "5 missing",
    ]);
  });
});

describe("heads", () => {
  const fields: Readonly<Record<string, string>> = {
    number:
      "Part #|Item #|partNo|part_number|Bestellnr.|Part no.|PART NUMBER|SKU|Item no.|Art.-Nr.|Artikelnummer|Bestell-Nr.|Réf.|Référence|Código|品番|رقم القطعة",
    name: "Name|Description|Bezeichnung|Désignation|Descripción|品名|الاسم",
    is: "What|Kind|Type|Art|Kategorie|Tipo|種類|النوع",
    teeth:
      "# of teeth|toothCount|Zähnez.|歯数(枚)|Teeth|No. of teeth|Tooth count|TEETH (Z)|z|Zähne|Zähnezahl|Nb. de dents|Nombre de dents|Nº de dientes|歯数|عدد الأسنان",
    driver: "Driver|Pinion|Pinion teeth|Teeth (pinion)|Ritzel|Sun|ピニオン歯数",
    driven: "Driven|Ring|Ring gear|Spur teeth|Tellerrad|Couronne|Corona",
    value: "Ratio|Gear ratio|Übersetzung|Rapport|Relación|減速比",
    module: "Module|Modul|Módulo|Mod.|m|モジュール|الموديول",
    diametralPitch: "DP|D.P.|Diametral pitch",
    toothPitch: "Pitch|Teilung|Pas|Paso|Module/DP",
    pitch: "Belt pitch|Riementeilung|Pas de la courroie",
    bore: "bore_mm|boreDiameter|Bohr. Ø|Alés. (mm)|Bore|Bore (mm)|Bore/mm|Bore, in|Shaft|Bohrung [mm]|Ø Bohrung|Bohrung in mm|Alésage|Ø int.|Eje (mm)|穴径|القطر الداخلي (مم)",
    width: "Width|Face width (in)|Breite|Largeur|Ancho|幅（mm）|العرض",
    round: "OD|O.D.|Outside diameter|Außendurchmesser|Ø ext.|外径",
    circles: "Hub holes|PCD|Lochkreis (mm)|Trous",
    maker: "Maker|Brand|Hersteller|Fabricant|Marca|メーカー|الصانع",
    price: "Price|Price (EUR)|Price €|Preis €|Preis (inkl. MwSt.)|Prix TTC|Prix (€)|Precio|€|EUR|価格(円)|السعر",
    currency: "Currency|Währung|Devise|Moneda|通貨|العملة",
    checked: "last_updated|Checked|Price checked|Date|Stand|Vu le|Fecha|確認日|التاريخ",
    source: "Shop|Supplier|Where|Bezugsquelle|Fournisseur|Proveedor|購入先|المورد",
    available: "Available|In stock|Lieferbar|Auf Lager|Dispo|Disponible|متوفر",
    pack: "Pack|Pack size|VE|Lot de|入数",
    owned: "Own|Owned|Have|Bestand|Tengo|所有数",
    status: "Status|État|Estado|状態",
    unused: "Colour|Notes|Bemerkung|備考|Total|#",
  };
  const all = Object.entries(fields).flatMap(([field, heads]) =>
    heads.split("|").map((head) => [head, field] as const),
  );

  it.each(all)("%s: %s", (head, field) => {
    const { columns, questions } = sheet([`Facing|Profile shift|${head}|Angle|Hub`, "||||"]);
    expect(columns[2]).toMatchObject({ head, field });
    expect(questions).toEqual([]);
  });

  it.each(["Bearing", "Ring size", "Wheel", "Price (competitor)", "Teeth missing", "Gearing", "Sprint", "Portage"])(
    "%s is nothing that is known, and is asked about",
    (head) => {
      const { questions } = sheet([`Name|What|${head}|Facing`, "A|other|5|"]);
      expect(
        questions.filter(({ field }) => !field).map(({ code, head: about }) => [code.startsWith("column-"), about]),
      ).toEqual([[true, head]]);
    },
  );

  it("say their unit, their currency and their order", () => {
    const { columns } = sheet(["Bore (mm)|Width, in|Price (EUR)|Ring/Pinion|Module [mm]|Preis", "|||||"]);
    expect(columns.map(({ unit, currency, order }) => unit ?? currency ?? order)).toEqual([
      "mm",
      "in",
      "EUR",
      "driven-driver",
      "mm",
      undefined,
    ]);
  });

  it("with ID beside OD mean the inside", () => {
    const { parts, questions } = sheet(["Name|What|ID (mm)|OD (mm)", "Sleeve 5|sleeve|3.17|5"]);
    expect(parts[0]).toMatchObject({ bore: "3.17 mm", outside: "5 mm" });
    expect(questions).toEqual([]);
  });
});

describe("what teeth are like", () => {
  it.each([
    ["Hohlrad 60", "internal"],
    ["Internal gear 60", "internal"],
    ["内歯車 60", "internal"],
    ["Couronne intérieure 60", "internal"],
    ["Kegelrad 20", "bevel"],
    ["Bevel gear 20T", "bevel"],
    ["Piñón cónico 12", "bevel"],
    ["Helical gear 40T 15°", "helical"],
    ["Roue dentée hélicoïdale 40", "helical"],
    ["Schneckenrad 30", "worm"],
    ["Worm wheel 30", "worm"],
    ["Pinion 15T", undefined],
    ["Stirnrad 62", undefined],
    ["Spur gear 62T", undefined],
    ["Pinion 15T for bevel box", undefined],
    ["Ritzel für Kegelradgetriebe 15 Zähne", undefined],
    ["Ring gear 35", undefined],
  ])("%s", (name, form) => {
    for (const heads of ["Name|Maker", "Name|Maker|Module|Teeth"]) {
      const { parts } = sheet([heads, `${name}|Dulse|0.8|20`]);
      expect(parts[0]!.form).toBe(form);
    }
    const answered = sheet(["Name|Form|Teeth", `${name}|spur|20`]).parts[0]!;
    expect(answered.form).toBe("spur");
  });
});
