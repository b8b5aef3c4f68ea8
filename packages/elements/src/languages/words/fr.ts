import type { Words } from "./en.js";
import type { Table } from "@meshwright/calc/languages";

/** What the elements say in French. */
export const words: Table<Words> = {
  comma: ",",
  teeth: "{0}, dents",
  gear: "roue {0}",
  fields: {
    driver: "menante",
    driven: "menée",
    starts: "filets",
    teeth: "roue",
    sun: "solaire",
    ring: "couronne",
    planet: "satellite",
    planets: "satellites",
  },
  set: "{0}, paire assortie",
  wholeOnly: "Dents entières, dès {0}. On garde {1}.",
  most: "{0} au plus ici. On garde {1}.",
  kept: "{0} On garde {1}.",
  article: "article {0}",
  yours: "ici {0} · article {1}",
  less: "Une de moins",
  more: "Une de plus",
  undo: "Annuler",
  reset: "Revenir aux valeurs de l’article",
  restored: "Ce sont les valeurs de l’article.",
  copy: "Copier le lien de cette version",
  copied: "Lien copié.",
  link: "Lien de cette version",
  readers: {
    one: "Version d’un lecteur : {0} modification.",
    many: "Version d’un lecteur : {0} de modifications.",
    other: "Version d’un lecteur : {0} modifications.",
  },
  showArticle: "Voir l’article.",
  changed: "Modifié : {0}.",
  structure: "les étages",
  start: "départ",
  enlarged: "le bout, {0}×",
  findings: { one: "{0} point à corriger", many: "{0} de points à corriger", other: "{0} points à corriger" },
};
