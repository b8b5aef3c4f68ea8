import type { Table } from "@meshwright/calc/languages";
import type { ToolWords } from "./en.js";

/** What the elements beyond an article's own say in Arabic. */
export const words: Table<ToolWords> = {
  copyList: "نسخ كنص",
  copied: "نُسخ.",
  notCopied: "لا تستطيع هذه الصفحة النسخ؛ حدّد النص.",
  printPage: "طباعة",

  question: "أي ترسين يجعلان المجموع بين {0} و{1} ويناسبان؟",
  rangeFrom: "يبدأ المدى عند",
  rangeTo: "ينتهي المدى عند",
  among: "من بين",
  amongAll: "كل القطع المدرجة",
  amongHad: "القطع المتوفرة",
  amongOwned: "القطع الموجودة",
  sleeves: "مع جلب وصفائح مواءمة",
  sortBy: "أولًا",
  sorts: {
    nearest: "الأقرب إلى منتصف المدى",
    cheapest: "الأرخص",
    "fewest-new": "أقل قطع جديدة",
    closest: "أقصر مسافة بين المحاور",
  },
  morePairs: "أزواج أخرى: {0}",
  moreMisses: "المزيد من القريبة",
  choose: "اختيار",
  chosen: "مركّب",
  looking: "بحث: فُحص {0} من الأزواج.",
  stop: "إيقاف",
  stopped: "توقّف؛ يُعرض ما وُجد حتى الآن.",
  numberOnly: "رقم أكبر من 0.",

  letTurn: "أدر",
  holdStill: "أوقف",

  editor: {
    shared: "من المحرك إلى التفرّع",
    add: "إضافة مرحلة",
    up: "إلى أعلى: {0}",
    down: "إلى أسفل: {0}",
    remove: "حذف: {0}",
    gearMore: "ترس إضافي: {0}",
    gearLess: "ترس أقل: {0}",
    more: "كل البيانات: {0}",
    kinds: {
      pair: "زوج تروس",
      train: "صف تروس",
      belt: "سير أو سلسلة",
      worm: "ترس دودي",
      planetary: "تروس كوكبية",
      cycloidal: "تروس سيكلويدية",
      measured: "نسبة معدودة بالتدوير",
      published: "نسبة مطبوعة",
      selectable: "علبة بذراع",
    },
  },
};
