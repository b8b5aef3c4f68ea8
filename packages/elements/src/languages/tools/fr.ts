import type { Table } from "@meshwright/calc/languages";
import type { ToolWords } from "./en.js";

/** What the elements beyond an article's own say in French. */
export const words: Table<ToolWords> = {
  copyList: "Copier le texte",
  copied: "Copié.",
  notCopied: "Cette page ne peut pas copier ; sélectionner le texte.",
  printPage: "Imprimer",

  question: "Quels deux engrenages mènent le total entre {0} et {1}, et se montent ?",
  rangeFrom: "La plage commence à",
  rangeTo: "La plage finit à",
  among: "Parmi",
  amongAll: "toutes les pièces listées",
  amongHad: "les pièces disponibles",
  amongOwned: "les pièces en main",
  sleeves: "avec bagues et plaques d’adaptation",
  sortBy: "D’abord",
  sorts: {
    nearest: "le plus près du milieu de la plage",
    cheapest: "le moins cher",
    "fewest-new": "le moins de pièces neuves",
    closest: "le plus petit entraxe",
  },
  morePairs: "Autres paires : {0}",
  moreMisses: "Plus de justesse à côté",
  choose: "Prendre",
  chosen: "montée",
  looking: "Recherche : {0} des paires vues.",
  stop: "Arrêter",
  stopped: "Arrêté ; voici ce qui a été trouvé jusque-là.",
  numberOnly: "Un nombre supérieur à 0.",

  letTurn: "Faire tourner",
  holdStill: "Immobiliser",

  editor: {
    shared: "Du moteur à la répartition",
    add: "Ajouter un étage",
    up: "Monter : {0}",
    down: "Descendre : {0}",
    remove: "Retirer : {0}",
    gearMore: "Une roue de plus : {0}",
    gearLess: "Une roue de moins : {0}",
    more: "Toutes les données : {0}",
    kinds: {
      pair: "Paire d’engrenages",
      train: "Suite d’engrenages",
      belt: "Courroie ou chaîne",
      worm: "Vis sans fin",
      planetary: "Train épicycloïdal",
      cycloidal: "Cycloïdal",
      measured: "Compté en tournant",
      published: "Rapport imprimé",
      selectable: "Boîte à levier",
    },
  },
};
