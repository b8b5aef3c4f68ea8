import type { PartKind } from "../../stages/index.js";

/**
 * Words for what a part is, by language: singulars; what is not of the fields of a drive is `other`. What stands
 * under a question mark is perhaps that, and is asked about. English, German and Japanese name the thing last, French,
 * Spanish and Arabic first.
 */
export type KindWords = Readonly<Partial<Record<PartKind | `${PartKind}?`, string>>>;

const english: KindWords = {
  pinion: "pinion|pinion gear|motor pinion|drive pinion",
  spur: "spur|spur gear|main gear|main spur",
  gear: "gear|gear wheel|gearwheel|cog|cog wheel|cogwheel|toothed wheel|spur wheel|idler|idler gear|ring gear|crown wheel|crown gear|crown|bevel gear|bevel|worm wheel|worm gear|wormwheel|wormgear|planet gear|planet wheel|planet|sun gear|sun wheel|internal gear|helical gear|row gear|diff gear|change gear|compound gear|counter gear",
  set: "gear set|gearset|ring and pinion|ring pinion|r and p|pinion and ring|crown wheel and pinion|crown and pinion|crown pinion|cwp|pinion and crown wheel|ring gear and pinion|ring and pinion gear|pinion and ring gear|spur and pinion|pinion and spur|pinion spur|spur pinion set|ring set|ring gear set|crown set|bevel set|bevel gear set|worm set|worm and wheel|worm and worm wheel|worm gear set|worm wheel set|worm and gear|final drive set",
  hub: "hub gear|hub gear set|hub set|hub reduction|hub reduction set|portal|portal gear|portal gear set|portal set",
  gearbox:
    "gearbox|gear box|gearhead|gear head|gearmotor|gear motor|geared motor|motor with gearbox|motor and gearbox|reducer|speed reducer|reduction box|reduction gearbox|planetary gearbox|planetary box|transfer case|transfer box|transmission|gear reducer|planetary reducer|worm gearbox",
  worm: "worm|worm screw|worm shaft",
  planetary: "planetary|planetary set|planetary gear set|planetary gear|epicyclic|epicyclic set|epicyclic gear set",
  belt: "belt|timing belt|toothed belt|drive belt|chain|roller chain|drive chain",
  pulley:
    "pulley|belt pulley|timing pulley|idler pulley|belt wheel|sprocket|chain wheel|chainwheel|chain sprocket|sprocket wheel|tensioner pulley|belt idler|chain ring",
  wheel: "wheel|tyre|tire|wheel and tyre|wheel and tire|tyre and wheel|tire and wheel|road wheel",
  sleeve:
    "sleeve|adapter sleeve|adaptor sleeve|reducing sleeve|reducer sleeve|bore sleeve|shaft sleeve|shaft adapter|bore adapter|bore reducer|reducing bush|reducing bushing",
  plate: "adapter plate|adaptor plate|hole plate|hole adapter plate|hub adapter plate|hub plate",
  motor: "motor|engine|electric motor",
  battery: "battery|battery pack|accumulator|lipo|lipo pack|lipo battery",
  other:
    "other|others|misc|miscellaneous|sundry|bearing|wheel bearing|ball bearing|screw|bolt|nut|wheel nut|washer|shim|spacer|circlip|clip|e clip|snap ring|retaining ring|o ring|piston ring|key ring|pin roller|roll pin|spring pin|shaft|driveshaft|drive shaft|axle|half shaft|diff|differential|coupler|coupling|joint|universal joint|dogbone|bracket|mount|motor mount|grease|oil|lubricant|glue|cement|threadlock|servo|esc|controller|speed controller|receiver|transmitter|radio|charger|body|shell|shock|damper|spring|arm|link|rod|tool|puller|key|cover|case|housing|casing|gear case|hub carrier|wheel hub|knuckle|seal|gasket|tape|wire|cable|connector|plug|switch|tensioner|guard|rim|insert|foam|clutch|clutch bell|brake|disc|drum|flywheel|handwheel|steering wheel|freewheel|castor|caster|fan|heat sink|heatsink|led|strap|tray|holder|stand|jig|gauge|file|driver|wrench|spanner|screwdriver|paint|decal|sticker|manual|book|rack|lock|hex|adapter|adaptor|holder|collar|shaft collar|pliers|chassis|bumper|wing|winch|hook|weight|magnet|sensor|encoder|bulb|fuse|kit bag|bag|cleaner",
  "pinion?": "pin",
  "gear?": "ring|idler wheel|internal ring",
  "hub?": "hub",
  "set?": "set|pinion set|pair",
  "gearbox?": "box|reduction|drive unit|drive|axle drive|final drive",
  "sleeve?": "bush|bushing|insert bush",
  "plate?": "plate|motor plate|mounting plate",
  "battery?": "pack|cell",
};

const german: KindWords = {
  pinion: "ritzel|antriebsritzel|motorritzel|kegelritzel|stahlritzel",
  spur: "hauptzahnrad|hauptrad",
  gear: "zahnrad|stirnrad|stirnzahnrad|kegelrad|schneckenrad|planetenrad|sonnenrad|hohlrad|tellerrad|zwischenrad|kronrad|schrägstirnrad|getrieberad|differentialrad|zahnkranz",
  set: "tellerrad und kegelrad|teller und kegelrad|tellerrad und ritzel|ritzel und tellerrad|zahnradsatz|kegelradsatz|kegelradpaar|schneckensatz|radsatz schnecke|ritzel und hauptzahnrad|hauptzahnrad und ritzel|schnecke und schneckenrad|zahnradpaar|getriebesatz",
  hub: "portalsatz|nabengetriebe|radnabengetriebe|portalgetriebe|nabenuntersetzung|portalzahnräder",
  gearbox:
    "getriebe|getriebekasten|planetengetriebe|getriebemotor|motor mit getriebe|untersetzungsgetriebe|verteilergetriebe|schneckengetriebe|stirnradgetriebe|reduktionsgetriebe",
  worm: "schnecke|schneckenwelle",
  planetary: "planetensatz|planetenradsatz|planetenstufe",
  belt: "riemen|zahnriemen|kette|rollenkette|antriebsriemen",
  pulley:
    "riemenscheibe|zahnscheibe|zahnriemenscheibe|synchronscheibe|kettenrad|umlenkrolle|spannrolle|riemenrad|zahnriemenrad|ritzel für kette|kettenritzel",
  wheel: "rad|reifen|laufrad|komplettrad|rad und reifen|rad mit reifen",
  sleeve: "hülse|adapterhülse|reduzierhülse|reduzierbuchse|adapterbuchse|wellenadapter|bohrungsadapter",
  plate: "adapterplatte|lochplatte|lochkreisadapter|adapterscheibe",
  motor: "motor|elektromotor",
  battery: "akku|akkupack|batterie|fahrakku",
  other:
    "sonstiges|andere|anderes|lager|kugellager|radlager|gleitlager|flanschlager|schraube|mutter|radmutter|scheibe|unterlegscheibe|passscheibe|distanz|distanzscheibe|distanzhülse|welle|antriebswelle|achse|steckachse|halter|halterung|motorhalter|abzieher|fett|öl|getriebeöl|servo|regler|fahrregler|empfänger|sender|ladegerät|karosserie|stoßdämpfer|dämpfer|feder|gehäuse|getriebegehäuse|deckel|dichtung|stift|sicherungsring|sprengring|o ring|kolbenring|dichtring|simmering|spanner|riemenspanner|kettenspanner|schwungrad|lenkrad|handrad|freilauf|kupplung|bremse|bremsscheibe|differential|differenzial|diff|kabel|stecker|werkzeug|schlüssel|kleber|reifenkleber|felge|einlage|reifeneinlage|mitnehmer|radmitnehmer|radnabe|kardan|gelenk|kardanwelle|bolzen|träger|strebe|lenker|achsschenkel|lüfter|kühlkörper|griff|haube|spoiler|rolle|stellring|klemmring|passfeder",
  "other?": "ring",
  "hub?": "nabe",
  "set?": "satz|ritzelsatz|paar",
  "gearbox?": "untersetzung|übersetzung|antrieb",
  "sleeve?": "buchse",
  "plate?": "platte",
};

const french: KindWords = {
  pinion: "pignon|pignon moteur",
  spur: "couronne|couronne principale|roue principale",
  gear: "roue dentée|engrenage|roue conique|roue libre dentée|pignon intermédiaire|roue intermédiaire|roue à vis|roue de vis sans fin|roue tangente|couronne conique|couronne de différentiel|couronne intérieure|satellite|planétaire pignon|pignon satellite|pignon conique",
  set: "couronne et pignon|pignon et couronne|couple conique|jeu d'engrenages|jeu apparié|jeu de pignons|jeu de couronne et pignon|ensemble couronne et pignon|vis et roue",
  hub: "réducteur de moyeu|réduction de moyeu|portique|engrenages de moyeu",
  gearbox:
    "réducteur|réducteur planétaire|motoréducteur|moteur réducteur|moteur à réducteur|moteur avec réducteur|boîte|boîte de vitesses|boîte de transfert|boîtier de réduction",
  worm: "vis sans fin",
  planetary: "train épicycloïdal|train planétaire|jeu planétaire",
  belt: "courroie|courroie crantée|courroie dentée|chaîne",
  pulley: "poulie|poulie crantée|poulie dentée|poulie folle|galet tendeur|pignon de chaîne|roue de chaîne",
  wheel: "roue|pneu|roue complète|roue et pneu|roue avec pneu",
  sleeve: "douille|douille de réduction|bague de réduction|manchon|réduction d'alésage|adaptateur d'arbre",
  plate: "plaque d'adaptation|plaque adaptateur|platine d'adaptation|plaque à trous",
  motor: "moteur",
  battery: "batterie|accu|accumulateur",
  other:
    "autre|autres|divers|roulement|roulement à billes|palier|vis|écrou|boulon|rondelle|cale|entretoise|arbre|axe|cardan|support|graisse|huile|colle|servo|variateur|récepteur|émetteur|chargeur|carrosserie|amortisseur|ressort|bras|biellette|outil|extracteur|arrache|clé|couvercle|carter|joint|goupille|circlips|tendeur|jante|insert|embrayage|cloche|frein|disque|volant|différentiel|câble|fiche|moyeu|porte moyeu|fusée|aimant|sticker",
  "set?": "jeu|ensemble|lot",
  "sleeve?": "bague",
  "plate?": "plaque|platine",
};

const spanish: KindWords = {
  pinion: "piñón|piñón de motor|piñón motor",
  spur: "corona|corona principal",
  gear: "rueda dentada|engranaje|engrane|rueda cónica|engranaje loco|rueda loca|rueda helicoidal|rueda de tornillo sin fin|corona cónica|corona de diferencial|corona interior|satélite|piñón cónico|planeta",
  set: "corona y piñón|piñón y corona|grupo cónico|juego de engranajes|juego de corona y piñón|tornillo y corona",
  hub: "reductora de cubo|engranajes de cubo|reducción de cubo|pórtico",
  gearbox:
    "reductor|reductora|motorreductor|motor con reductora|caja de cambios|caja reductora|caja de transferencia|caja de engranajes",
  worm: "tornillo sin fin|sinfín",
  planetary: "tren epicicloidal|juego planetario|conjunto planetario",
  belt: "correa|correa dentada|cadena",
  pulley: "polea|polea dentada|polea loca|polea tensora|piñón de cadena|rueda de cadena",
  wheel: "rueda|neumático|cubierta|rueda completa|llanta y neumático|rueda y neumático",
  sleeve: "manguito|casquillo reductor|casquillo de reducción|casquillo adaptador|buje reductor|adaptador de eje",
  plate: "placa adaptadora|placa de adaptación|placa con agujeros",
  motor: "motor",
  battery: "batería|acumulador",
  other:
    "otro|otros|otra|otras|varios|rodamiento|cojinete|tornillo|tuerca|perno|arandela|separador|eje|palier|cardán|soporte|grasa|aceite|pegamento|cola|servo|variador|receptor|emisora|cargador|carrocería|amortiguador|muelle|brazo|herramienta|extractor|llave|tapa|cárter|carcasa|junta|retén|pasador|circlip|tensor|llanta|espuma|embrague|campana|freno|disco|volante|diferencial|cable|conector|portamangueta|mangueta|imán|pegatina",
  "set?": "juego|conjunto",
  "hub?": "cubo|buje",
  "sleeve?": "casquillo",
  "plate?": "placa",
};

const japanese: KindWords = {
  pinion: "ピニオン|ピニオンギア|ピニオンギヤ|ピニオン歯車",
  spur: "スパーギア|スパーギヤ|スパー",
  gear: "ギア|ギヤ|歯車|アイドラー|ウォームホイール|ウォームギア|ウォームギヤ|リングギア|リングギヤ|スプロケットギア",
  set: "リングピニオン|リング・ピニオン|リング&ピニオン|リングとピニオン|ギアセット|ギヤセット|歯車セット|ベベルギアセット|ウォームセット",
  hub: "ハブギア|ハブギヤ|ハブリダクション|ポータルギア|ポータルギヤ|ハブ減速",
  gearbox:
    "ギアボックス|ギヤボックス|減速機|ギアモーター|ギヤードモーター|ギアードモーター|ギヤモータ|ギアモータ|ギヤードモータ|トランスファー|トランスファーケース|変速機|ギアヘッド|ギヤヘッド",
  worm: "ウォーム|ウォームシャフト",
  planetary: "遊星ギアセット|遊星歯車セット|プラネタリーギアセット|遊星セット",
  belt: "ベルト|チェーン",
  pulley: "プーリー|プーリ|スプロケット|アイドラープーリー",
  wheel: "タイヤ|ホイール|車輪",
  sleeve: "スリーブ|アダプタースリーブ|軸アダプター|変換スリーブ",
  plate: "アダプタープレート|アダプタプレート|変換プレート",
  motor: "モーター|モータ",
  battery: "バッテリー|バッテリ|電池",
  other:
    "その他|ベアリング|軸受|ネジ|ねじ|ボルト|ナット|ワッシャー|シム|スペーサー|カラー|シャフト|アクスル|ジョイント|マウント|ステー|グリス|オイル|接着剤|サーボ|アンプ|受信機|送信機|充電器|ボディ|ボディー|ダンパー|スプリング|アーム|ロッド|工具|プーラー|レンチ|カバー|ケース|オイルシール|シール|ガスケット|ピン|クリップ|テンショナー|リム|インナー|クラッチ|クラッチベル|ブレーキ|ディスク|フライホイール|ハンドル|デフ|ケーブル|コネクター|キャリア|ナックル|Oリング|ファン|ヒートシンク|ベルトカバー",
  "hub?": "ハブ",
  "other?": "リング",
  "set?": "セット",
  "sleeve?": "ブッシュ|ブッシング",
  "plate?": "プレート",
};

const arabic: KindWords = {
  pinion: "بنيون|ترس بنيون|ترس صغير للمحرك",
  gear: "ترس|مسنن|عجلة مسننة|ترس تاجي|ترس مخروطي|ترس وسيط|ترس دودي|عجلة دودية|ترس حلقي",
  spur: "ترس رئيسي|الترس الرئيسي",
  set: "طقم تروس|مجموعة تروس|تاج وبنيون|بنيون وتاج",
  hub: "تروس الصرة|طقم تروس الصرة",
  gearbox: "علبة تروس|صندوق تروس|مخفض سرعة|مخفض|محرك بعلبة تروس|محرك تخفيض|علبة نقل",
  worm: "دودة|برغي دودي|لولب دودي",
  planetary: "طقم تروس كوكبية|مجموعة كوكبية|تروس كوكبية",
  belt: "سير|سير مسنن|حزام|سلسلة|جنزير",
  pulley: "بكرة|بكرة مسننة|بكرة شد|ترس سلسلة|ترس جنزير",
  wheel: "عجلة|إطار|دولاب|كفر",
  sleeve: "جلبة|جلبة تحويل|كم تحويل",
  plate: "لوح تحويل|لوحة تحويل|صفيحة تحويل",
  motor: "محرك|موتور",
  battery: "بطارية",
  other:
    "أخرى|اخرى|آخر|محمل|رولمان|بيل|برغي|مسمار|صامولة|حلقة|عمود|محور|وصلة|حامل|شحم|زيت|غراء|سيرفو|منظم|مستقبل|مرسل|شاحن|هيكل|ممتص|نابض|ذراع|أداة|مفتاح|غطاء|جلدة|دبوس|شداد|جنط|قابض|مكابح|حدافة|مقود|تفاضلي|كابل|صرة",
  "set?": "طقم|مجموعة",
  "plate?": "لوحة|صفيحة",
};

/** Languages that name the thing last, then those that name it first. */
export const kindWords = {
  last: [english, german, japanese],
  first: [french, spanish, arabic],
  compound: [german, japanese],
};

/** Behind a number they are a measure: a pinion with a 5 mm shaft is a pinion. */
export const measures =
  "shaft|axle|bore|hub|pitch|welle|achse|bohrung|nabe|axe|arbre|alésage|eje|agujero|cubo|軸|穴|محور|ثقب";

/** Words beside the thing that say how it is, and change nothing about what it is. */
export const manners =
  "steel|hardened|brass|bronze|nylon|acetal|plastic|alloy|aluminium|aluminum|alu|titanium|delrin|moulded|molded|machined|cut|black|white|red|blue|grey|gray|gold|silver|orange|green|yellow|new|used|old|spare|spares|hd|heavy|duty|light|lightweight|standard|std|front|rear|left|right|small|large|big|long|short|bore|pitch|teeth|tooth|mod|module|dp|mm|cm|in|inch|wide|thick|od|id|degree|deg|ratio|hard|soft|medium|style|type|set|sets|kit|kits|pcs|pack|pair|of|x|t|z|p|m|s|d|b|w|sealed|rubber|metal|flanged|straight|single|double|start|helical|ccw|cw|fine|coarse|" +
  "stahl|gehärtet|messing|kunststoff|eingängig|zweigängig|neu|gebraucht|schwarz|weiß|vorn|vorne|hinten|links|rechts|klein|groß|lang|kurz|modul|zähne|zahn|bohrung|breit|zoll|satz|stück|" +
  "acier|laiton|plastique|trempé|trempée|moulé|moulée|noir|noire|neuf|neuve|avant|arrière|gauche|droite|petit|petite|grand|grande|dents|alésage|" +
  "acero|latón|plástico|templado|templada|moldeado|negro|negra|nuevo|nueva|delantero|trasero|delantera|trasera|dientes|" +
  "ブラシレス|スチール|金属|樹脂|強化|前|後|右|左|用|個|枚|歯|" +
  "فولاذ|نحاس|بلاستيك|مسنن|كبير|صغير|كبيرة|صغيرة|أمامي|خلفي|أمامية|خلفية";

/** What follows them says what the thing is for or comes with. */
export const joints =
  "for|with|w|to|fits|from|on|without|incl|including|für|mit|zu|von|ohne|inkl|auf|pour|avec|sans|de|du|des|d|à|au|para|con|sin|del|a|ل|مع|من";
