import type { Words } from "./en.js";
import type { Table } from "@meshwright/calc/languages";

/** What the elements say in Spanish. */
export const words: Table<Words> = {
  comma: ",",
  teeth: "{0}, dientes",
  gear: "rueda {0}",
  fields: {
    driver: "conductora",
    driven: "conducida",
    starts: "entradas",
    teeth: "rueda",
    sun: "solar",
    ring: "corona",
    planet: "satélite",
    planets: "satélites",
  },
  set: "{0}, juego",
  wholeOnly: "Solo dientes enteros, desde {0}. Queda {1}.",
  most: "{0} es lo máximo aquí. Queda {1}.",
  kept: "{0} Queda {1}.",
  article: "artículo {0}",
  yours: "aquí {0} · artículo {1}",
  less: "Uno menos",
  more: "Uno más",
  undo: "Deshacer",
  reset: "Volver a los valores del artículo",
  restored: "Estos son los valores del artículo.",
  copy: "Copiar el enlace a esta versión",
  copied: "Enlace copiado.",
  link: "Enlace a esta versión",
  readers: {
    one: "Versión de un lector: 1 cambio.",
    many: "Versión de un lector: {0} de cambios.",
    other: "Versión de un lector: {0} cambios.",
  },
  showArticle: "Ver el artículo.",
  changed: "Cambiado: {0}.",
  structure: "las etapas",
  start: "inicio",
  enlarged: "el extremo, {0}×",
  findings: { one: "1 cosa por corregir", many: "{0} de cosas por corregir", other: "{0} cosas por corregir" },
};
