// Shows what a sheet of parts was understood as. What it means is calc's to say; answers are given in the cells' places.
import { csvOf, partsFromSheet, questionText, readSheet, sheetOf, sheetWords } from "../calc/parts/index.js";

const [file, table, state, questions, columns, parts, back] = [
  "file",
  "table",
  "state",
  "questions",
  "columns",
  "parts",
  "back",
].map((id) => document.getElementById(id));
let rows = [];
let settings = {};

const make = (tag, ...content) => {
  const element = document.createElement(tag);
  element.append(...content);
  return element;
};

function choose(label, options, chosen, act) {
  const select = make("select", ...options.map(([value, text]) => new Option(text, value, false, value === chosen)));
  select.setAttribute("aria-label", label);
  select.addEventListener("change", () => {
    act(select.value);
    show();
  });
  return select;
}

const setColumn = (key, meaning) => {
  settings = { ...settings, columns: { ...settings.columns, [key]: { ...settings.columns?.[key], ...meaning } } };
};

/** A question with its answers: those that it offers, for the cell or for the whole column, or any other. */
function item(question) {
  const { key, line, head, columnKey, choices = [] } = question;
  const say = (answer) => (settings = { ...settings, answers: { ...settings.answers, [key]: answer } });
  const offered = choices.flatMap(({ answer, column }, n) => [
    ...(key.startsWith("column.") ? [] : [[`a${n}`, answer || "not known"]]),
    ...(column && columnKey ? [[`c${n}`, `${answer || "nothing"}, wherever this column says so`]] : []),
  ]);
  const act = (value) => {
    const { answer, column } = choices[Number(value.slice(1))];
    if (value.startsWith("c")) setColumn(columnKey, column);
    else say(answer);
  };
  const sentence = questionText(question);
  const input = make("input");
  input.setAttribute("aria-label", `Line ${line}, another answer`);
  input.addEventListener("change", () => {
    say(input.value);
    show();
  });
  const isOpen = !key.startsWith("column.") && !key.endsWith(".row");
  return make(
    "li",
    `Line ${line}${head ? `, ${head}` : ""}: ${sentence} `,
    ...(offered.length ? [choose(`Line ${line}: ${sentence}`, [["", "Answer"], ...offered], "", act), " "] : []),
    ...(isOpen ? [input] : []),
  );
}

function show() {
  const read = partsFromSheet(rows, settings);
  state.textContent = rows.length
    ? `${read.parts.length} parts, ${read.questions.length} questions. Passed over: ${read.passed.map(({ line, code }) => `line ${line}, ${sheetWords.passed[code]}`).join("; ") || "nothing"}.`
    : "";
  // A hundred are enough at a time.
  questions.replaceChildren(...read.questions.slice(0, 100).map(item));
  const fields = Object.entries(sheetWords.fields);
  columns.tBodies[0].replaceChildren(
    ...read.columns.map(({ key, head, field, unit, currency, why, sample }) =>
      make(
        "tr",
        make("td", head),
        make(
          "td",
          choose(`Column ${head}`, fields, field, (value) => setColumn(key, { field: value })),
          ` ${unit ?? currency ?? ""}`,
        ),
        make("td", sheetWords.reasons[why]),
        make("td", sample.join(" · ")),
      ),
    ),
  );
  parts.value = JSON.stringify(read.parts, null, 2);
  back.href = `data:text/csv;charset=utf-8,${encodeURIComponent(csvOf(sheetOf(read.parts)))}`;
}

function read(source) {
  ({ rows } = readSheet(source));
  settings = {};
  show();
}

table.addEventListener("input", () => read(table.value));
file.addEventListener("change", async () => {
  if (file.files[0]) read(await file.files[0].arrayBuffer());
});
