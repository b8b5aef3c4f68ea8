import type { Table } from "@meshwright/calc/languages";
import type { ToolWords } from "./en.js";

/** What the elements beyond an article's own say in Spanish. */
export const words: Table<ToolWords> = {
  copyList: "Copiar como texto",
  copied: "Copiado.",
  notCopied: "Esta página no puede copiar; selecciona el texto.",
  printPage: "Imprimir",

  question: "¿Qué dos engranajes llevan el total entre {0} y {1}, y encajan?",
  rangeFrom: "El intervalo empieza en",
  rangeTo: "El intervalo acaba en",
  among: "Entre",
  amongAll: "todas las piezas de la lista",
  amongHad: "piezas disponibles",
  amongOwned: "piezas que ya se tienen",
  sleeves: "con casquillos y placas adaptadoras",
  sortBy: "Primero",
  sorts: {
    nearest: "lo más cerca del medio del intervalo",
    cheapest: "lo más barato",
    "fewest-new": "menos piezas nuevas",
    closest: "menor distancia entre ejes",
  },
  morePairs: "Más pares: {0}",
  moreMisses: "Más por poco",
  choose: "Tomar",
  chosen: "montado",
  looking: "Buscando: {0} de los pares vistos.",
  stop: "Parar",
  stopped: "Parado; se muestra lo encontrado hasta aquí.",
  numberOnly: "Un número mayor que 0.",

  letTurn: "Hacer girar",
  holdStill: "Detener",

  editor: {
    shared: "Del motor al reparto",
    add: "Añadir una etapa",
    up: "Subir: {0}",
    down: "Bajar: {0}",
    remove: "Quitar: {0}",
    gearMore: "Una rueda más: {0}",
    gearLess: "Una rueda menos: {0}",
    more: "Todos los datos: {0}",
    kinds: {
      pair: "Par de engranajes",
      train: "Fila de engranajes",
      belt: "Correa o cadena",
      worm: "Sinfín",
      planetary: "Planetario",
      cycloidal: "Cicloidal",
      measured: "Contada girando",
      published: "Relación impresa",
      selectable: "Caja con palanca",
    },
  },
};
