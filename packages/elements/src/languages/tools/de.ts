import type { Table } from "@meshwright/calc/languages";
import type { ToolWords } from "./en.js";

/** What the elements beyond an article's own say in German. */
export const words: Table<ToolWords> = {
  copyList: "Als Text kopieren",
  copied: "Kopiert.",
  notCopied: "Diese Seite darf nicht kopieren; bitte den Text markieren.",
  printPage: "Drucken",

  question: "Welche zwei Zahnräder bringen die Gesamtuntersetzung zwischen {0} und {1} und passen?",
  rangeFrom: "Der Bereich beginnt bei",
  rangeTo: "Der Bereich endet bei",
  among: "Unter",
  amongAll: "allen gelisteten Teilen",
  amongHad: "lieferbaren Teilen",
  amongOwned: "vorhandenen Teilen",
  sleeves: "mit Hülsen und Adapterplatten",
  sortBy: "Zuerst",
  sorts: {
    nearest: "am nächsten an der Bereichsmitte",
    cheapest: "am billigsten",
    "fewest-new": "am wenigsten neue Teile",
    closest: "kleinster Achsabstand",
  },
  morePairs: "Weitere Paare: {0}",
  moreMisses: "Mehr, was knapp daneben liegt",
  choose: "Nehmen",
  chosen: "eingebaut",
  looking: "Suche: {0} der Paare gesehen.",
  stop: "Anhalten",
  stopped: "Angehalten; gezeigt wird, was bis hier gefunden wurde.",
  numberOnly: "Eine Zahl über 0.",

  letTurn: "Drehen lassen",
  holdStill: "Anhalten",

  editor: {
    shared: "Vom Motor bis zur Verzweigung",
    add: "Stufe hinzufügen",
    up: "Nach oben: {0}",
    down: "Nach unten: {0}",
    remove: "Entfernen: {0}",
    gearMore: "Ein Rad mehr: {0}",
    gearLess: "Ein Rad weniger: {0}",
    more: "Alle Angaben: {0}",
    kinds: {
      pair: "Zahnradpaar",
      train: "Räderreihe",
      belt: "Riemen oder Kette",
      worm: "Schnecke",
      planetary: "Planetengetriebe",
      cycloidal: "Zykloidgetriebe",
      measured: "Durch Drehen gezählt",
      published: "Aufgedruckte Übersetzung",
      selectable: "Schaltgetriebe",
    },
  },
};
