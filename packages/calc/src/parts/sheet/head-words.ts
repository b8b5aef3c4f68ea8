import type { SheetField } from "./meaning.js";

/** What a head can stand for, beside a field: a name or a number, a stock or a quantity of nobody knows whose, nothing. */
export type HeadSense = SheetField | "item" | "stock" | "quantity" | "each" | "unused" | "counting";

/** Whole heads in English, German, French, Spanish, Japanese and Arabic. A head that stands in two lists is of the first. */
export const headWords: Readonly<Record<HeadSense, string>> = {
  id: "id|ident",
  number:
    "number|part no|part #|item #|part nr|part number|part code|p n|pn|sku|code|item no|item number|item code|stock no|stock code|order no|order code|order number|cat no|catalogue no|catalog no|catalogue number|ref|ref no|reference|article no|article number|product code|product no|mpn|shop no|shop number|model no|no|nr|art nr|artnr|artikelnr|artikel nr|artikelnummer|best nr|bestell nr|bestellnr|bestellnummer|teilenummer|teile nr|teilenr|sachnummer|nummer|référence|référence article|réf article|n° article|no article|numéro article|numéro|n°|code article|code produit|referencia|código|codigo articulo|número|núm|n° pieza|número de pieza|品番|型番|メーカー型番|メーカー品番|部品番号|番号|商品番号|注文番号|品目番号|コード|رقم القطعة|رقم الصنف|رقم|الرقم|رمز|الرمز|كود|رقم الطلب|المرجع",
  name: "name|part name|desc|item name|item description|description|part description|title|designation|product|product name|label|part|parts|what is it|component|spare part|bezeichnung|bauteil|komponente|artikelbezeichnung|teilebezeichnung|teil|benennung|beschreibung|produkt|titel|désignation|nom|libellé|pièce|composant|produit|intitulé|nombre|descripción|denominación|pieza|componente|recambio|品名|名称|名前|部品名|商品名|部品|説明|الاسم|اسم|اسم القطعة|الوصف|القطعة|البيان|المنتج",
  item: "item|items|artikel|article|articles|artículo|品目|商品|الصنف|صنف",
  is: "is|what|kind|kind of part|type of part|type|part type|category|class|sort|art|typ|kategorie|teileart|warengruppe|gruppe|group|was|genre|catégorie|famille|quoi|sorte|type de pièce|tipo|tipo de pieza|clase|categoría|familia|種類|種別|分類|カテゴリ|カテゴリー|タイプ|区分|النوع|نوع|نوع القطعة|الفئة|فئة|التصنيف",
  stage:
    "stage|for stage|for|fitted to|stufe|für stufe|für|verbaut in|étage|pour|monté sur|etapa|para|montado en|段|使用箇所|取付先|المرحلة|مرحلة",
  driver:
    "driver|z1|driver teeth|driving|driving teeth|pinion|pinion teeth|teeth pinion|sun|sun teeth|ritzel|ritzelzähne|zähne ritzel|treibend|sonne|sonnenrad|pignon|dents pignon|menant|solaire|piñón|dientes piñón|conductor|solar|ピニオン|ピニオン歯数|ピニオンギア|駆動側|駆動側歯数|サンギア|البنيون|بنيون|أسنان البنيون|الترس القائد",
  driven:
    "driven|z2|driven teeth|spur|spur teeth|teeth spur|ring|ring teeth|teeth ring|ring gear|ring gear teeth|crown|crown teeth|crown wheel|hohlrad|tellerrad|zähne tellerrad|hauptzahnrad|getrieben|couronne|dents couronne|mené|corona|dientes corona|conducido|リング|リングギア|リングギア歯数|スパー|スパー歯数|スパーギア|被動側|被動側歯数|التاج|أسنان التاج|الترس المقود",
  teeth:
    "teeth|tooth|tooth count|teeth count|no of teeth|# teeth|n teeth|number of teeth|nr of teeth|z|count of teeth|links|starts|number of starts|zähne|zähnezahl|zahnzahl|anzahl zähne|zahl der zähne|gänge|gangzahl|glieder|dents|nb de dents|nbre de dents|nombre de dents|n° de dents|dientes|nº de dientes|n° dientes|num dientes|núm de dientes|número de dientes|cantidad de dientes|cant dientes|歯数|歯|丁数|عدد الأسنان|الأسنان|أسنان",
  value:
    "value|ratio|printed ratio|gear ratio|reduction|reduction ratio|übersetzung|untersetzung|i|rapport|rapport de réduction|réduction|démultiplication|relación|relación de transmisión|reducción|減速比|ギア比|ギヤ比|نسبة|النسبة|نسبة التخفيض|نسبة النقل",
  module: "module|mod|m|modul|módulo|モジュール|الموديول|موديول|المديول",
  diametralPitch: "dp|d p|diametral pitch|diametralpitch|pas diamétral|paso diametral|ダイヤメトラルピッチ",
  toothPitch:
    "pitch|gear pitch|tooth pitch|teilung|zahnteilung|pas|paso|ピッチ|الخطوة|خطوة|module dp|modul dp|dp module|mod dp|pitch module",
  pitch:
    "belt pitch|chain pitch|riementeilung|kettenteilung|pas de courroie|pas courroie|pas de la courroie|pas de chaîne|paso de correa|paso correa|paso de cadena|ベルトピッチ|チェーンピッチ|خطوة السير",
  pressureAngle: "pressure angle|angle|pa|eingriffswinkel|angle de pression|ángulo de presión|圧力角|زاوية الضغط",
  shift:
    "shift|profile shift|profilverschiebung|déport|desplazamiento|desplazamiento de perfil|転位|転位係数|إزاحة|الإزاحة",
  tipDiameter:
    "tip diameter|tip dia|tip circle|addendum diameter|kopfkreis|kopfkreisdurchmesser|diamètre de tête|diámetro de cabeza|歯先円直径|歯先径|قطر الرأس",
  outside: "outside|sleeve outside|sleeve outside diameter",
  round:
    "od|o d|outside diameter|outer diameter|outside dia|outer dia|outer|außendurchmesser|außen ø|ø außen|außen|d außen|diamètre extérieur|ø extérieur|ø ext|diam ext|diámetro exterior|diám ext|外径|القطر الخارجي",
  bore: "bore|bore diameter|bore size|bore dia|hole|hole size|shaft|shaft size|shaft diameter|for shaft|shaft hole|i d|inside diameter|inner diameter|inside dia|internal diameter|bohrung|bohrungsdurchmesser|innendurchmesser|ø bohrung|bohrung ø|ø innen|innen ø|welle|wellendurchmesser|alésage|ø alésage|diamètre alésage|diamètre intérieur|ø int|ø intérieur|axe|ø axe|diamètre axe|agujero|ø agujero|diámetro interior|ø interior|eje|ø eje|diámetro eje|diámetro del eje|taladro|穴径|内径|軸径|軸穴|軸穴径|穴|ボア|القطر الداخلي|الثقب|قطر الثقب|الفتحة|قطر المحور",
  across: "diameter|dia|diam|ø|durchmesser|diamètre|diámetro|直径|径|القطر|قطر",
  diameter:
    "wheel diameter|tyre diameter|tire diameter|tyre size|tire size|wheel size|raddurchmesser|reifendurchmesser|diamètre de roue|diamètre pneu|diámetro de rueda|diámetro neumático|タイヤ径|ホイール径|قطر العجلة|قطر الإطار",
  width:
    "width|face width|face|facewidth|thickness|breite|zahnbreite|dicke|largeur|largeur de denture|épaisseur|ancho|anchura|ancho de diente|espesor|grosor|幅|歯幅|厚さ|厚み|العرض|عرض|السمك",
  hub: "hub|boss|hub length|boss length|hub width|nabe|nabenlänge|moyeu|longueur moyeu|longueur du moyeu|cubo|longitud cubo|longitud del cubo|ハブ|ボス|ボス長|ハブ長|الصرة|طول الصرة",
  form: "form|tooth form|teeth form|kind of teeth|form of teeth|verzahnung|zahnform|verzahnungsart|denture|type de denture|forme de denture|dentado|tipo de dentado|forma de los dientes|歯形|歯の形|شكل الأسنان",
  facing: "facing|hub side",
  circles:
    "circles|hub holes|hole circle|hole circles|holes|bolt circle|bolt circles|pcd|lochkreis|lochkreise|löcher|trous|cercle de perçage|perçage|perçages|agujeros|círculo de agujeros|círculos de agujeros|取付穴|ボルト穴|ハブ穴|ثقوب|الثقوب|دائرة الثقوب",
  maker:
    "maker|make|manufacturer|brand|mfr|made by|hersteller|marke|fabrikat|fabricant|marque|fabricante|marca|メーカー|製造元|ブランド|الصانع|المصنع|الشركة المصنعة|الماركة|العلامة التجارية",
  price:
    "price|cost|price paid|paid|list price|purchase price|retail price|rrp|price per pack|preis|ek preis|vk preis|kaufpreis|listenpreis|packungspreis|kosten|prix|coût|tarif|prix du lot|precio|coste|costo|価格|値段|定価|販売価格|السعر|سعر|الثمن|ثمن|التكلفة",
  each: "price each|unit price|unit cost|cost each|cost per piece|cost per unit|each|pu|p u|price per piece|price per unit|stückpreis|einzelpreis|preis pro stück|preis je stück|prix unitaire|prix pièce|precio unitario|precio por unidad|precio por pieza|単価|سعر الوحدة|سعر القطعة",
  currency: "currency|curr|ccy|währung|devise|monnaie|moneda|divisa|通貨|العملة|عملة",
  checked:
    "checked|price checked|price checked on|price date|date of price|date|looked up|seen|seen on|as of|price as of|updated|last updated|price updated|bought on|date bought|purchased on|purchase date|stand|preisstand|datum|preisdatum|geprüft|geprüft am|gesehen|gesehen am|stand vom|preis vom|gekauft am|kaufdatum|date du prix|date prix|vu|vu le|relevé|relevé le|mise à jour|date d achat|acheté le|fecha|fecha del precio|fecha precio|visto|visto el|actualizado|fecha de compra|comprado el|確認日|日付|価格確認日|更新日|調査日|購入日|التاريخ|تاريخ|تاريخ السعر|تاريخ الشراء|تاريخ الفحص",
  source:
    "source|shop|supplier|vendor|store|where|where from|seller|dealer|from|bought from|bought at|link|url|web|website|bezugsquelle|quelle|lieferant|händler|laden|bezug|fournisseur|magasin|boutique|vendeur|lien|proveedor|tienda|vendedor|origen|enlace|購入先|入手先|店|仕入先|販売店|المصدر|المورد|المتجر|البائع",
  available:
    "available|availability|in stock|on sale|lieferbar|verfügbar|verfügbarkeit|auf lager|erhältlich|dispo|disponible|disponibilité|en stock|disponibilidad|en existencia|在庫有無|入手可|販売中|متوفر|التوفر|متاح",
  owned:
    "owned|own|have|i have|have it|got|got it|on hand|in the box|in my box|pieces owned|mine|bestand|vorhanden|im besitz|eigene|eigener bestand|possédé|possédés|quantité possédée|nombre possédé|j ai|en main|tengo|propias|propios|en casa|所有|所有数|手持ち|手持ち数|保有数|لدي|عندي|المملوك|الموجود لدي",
  pieces: "pieces for one place|pieces per place|stück je stelle|pièces par place|piezas por sitio",
  per: "for each vehicle axle or wheel|vehicle axle or wheel|je fahrzeug achse oder rad|par véhicule essieu ou roue",
  pack: "pack|pack size|pack of|per pack|pieces per pack|pcs per pack|packung|packungsgröße|packungsinhalt|ve|stück pro packung|stück je packung|verpackungseinheit|inhalt|conditionnement|lot|lot de|par lot|pièces par lot|paquete|piezas por paquete|unidades por paquete|入数|入り数|العبوة|عدد القطع في العبوة|القطع في العبوة",
  status: "status|state|etat|état|statut|estado|状態|状況|الحالة|حالة",
  stock:
    "stock|qty in stock|stock level|stock qty|lager|lagerbestand|vorrat|quantité en stock|existencias|在庫|在庫数|المخزون|مخزون",
  quantity:
    "qty|quantity|pcs|pieces|count|menge|anzahl|stück|stk|stückzahl|quantité|qté|qte|cantidad|cant|uds|unidades|piezas|数量|個数|الكمية|كمية|العدد",
  counting: "#|pos|position|row|line|lfd nr|lfdnr|posten|ligne|fila|línea|行|م",
  unused:
    "colour|color|farbe|couleur|色|اللون|weight|gewicht|poids|peso|重量|質量|الوزن|note|notes|remark|remarks|comment|comments|bemerkung|bemerkungen|anmerkung|anmerkungen|notiz|notizen|kommentar|remarque|remarques|commentaire|commentaires|nota|notas|observaciones|comentario|comentarios|備考|メモ|ملاحظة|ملاحظات|material|werkstoff|matière|matériau|材質|素材|المادة|bin|shelf|drawer|location|lagerplatz|lagerort|fach|schublade|regal|emplacement|tiroir|casier|ubicación|cajón|estante|棚|保管場所|الموقع|ean|barcode|gtin|image|picture|photo|bild|foto|total|line total|sum|subtotal|gesamt|gesamtpreis|summe|prix total|importe total|precio total|合計|小計|الإجمالي|المجموع|length|länge|longueur|longitud|長さ|الطول|discount|rabatt|remise|descuento|vat|mwst|tva|iva",
};

/** Words of a head that change nothing. */
export const headFillers =
  "of|the|per|a|an|in|de|du|des|la|le|les|l|d|del|el|los|las|der|die|das|den|des|von|vom|pro|je|zu";

/** Words beside a price that say whether tax is in it; the price stays one. */
export const priceFillers =
  "incl|inkl|including|excl|exkl|excluding|inc|ex|with|without|tax|vat|mwst|ust|net|netto|gross|brutto|ttc|ht|tva|iva|con|sin|hors|taxes|税込|税抜|税別|with tax|incl vat|excl vat|شامل|الضريبة";
