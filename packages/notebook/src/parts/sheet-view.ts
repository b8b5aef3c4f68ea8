import { html, nothing, type TemplateResult } from "lit";
import {
  questionText,
  sheetWords,
  type SheetField,
  type SheetParts,
  type SheetQuestion,
  type SheetSettings,
} from "@meshwright/calc/parts";

/** How a sheet that is being read is answered. */
export interface Answering {
  readonly settings: SheetSettings;
  readonly answer: (key: string, text: string) => void;
  readonly column: (key: string, field: SheetField | "unused" | object) => void;
}

const mostQuestions = 60;

/** What each column was taken for, with a sample, and the way to change it. */
export function columnsView({ columns }: SheetParts, { column }: Answering): TemplateResult {
  const fields = Object.entries(sheetWords.fields).sort(([, one], [, other]) => one.localeCompare(other));
  return html`<div class="scroll">
    <table>
      <caption class="heard">
        What the columns were taken for
      </caption>
      <thead>
        <tr>
          <th scope="col">Column</th>
          <th scope="col">Taken for</th>
          <th scope="col">Why</th>
          <th scope="col">Such as</th>
        </tr>
      </thead>
      <tbody>
        ${columns.map(
          ({ key, head, field, unit, currency, why, sample }) =>
            html`<tr>
              <th scope="row">${head || "no head"}</th>
              <td>
                <select
                  aria-label=${`${head || "This column"} is`}
                  @change=${(event: Event) => column(key, (event.target as HTMLSelectElement).value as SheetField)}
                >
                  ${fields.map(([value, text]) => html`<option value=${value} ?selected=${value === (field ?? "unused")}>${text}</option>`)}
                </select>
                ${unit ?? currency ?? ""}
              </td>
              <td class="quiet">${sheetWords.reasons[why]}</td>
              <td class="quiet">${sample.slice(0, 3).join(" · ")}</td>
            </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}

/** A question in its place, with the answers that it offers, for the cell or for its whole column, or any other. */
function questionView(question: SheetQuestion, { answer, column }: Answering): TemplateResult {
  const { key, line, head, columnKey, choices = [] } = question;
  const isColumn = key.startsWith("column.");
  const isRow = key.endsWith(".row");
  return html`<tr>
    <td class="number">${line}</td>
    <td>${head ?? (isRow ? "the row" : "")}</td>
    <td>
      <span class="fault">${questionText(question)}</span>
      ${choices.map(
        (choice) =>
          html`${
            isColumn
              ? nothing
              : html`<button type="button" @click=${() => answer(key, choice.answer)}>
                  ${choice.answer || "not known"}
                </button>`
          }${
            choice.column && columnKey
              ? html`<button type="button" @click=${() => column(columnKey, choice.column as object)}>
                  ${choice.answer || "nothing"}, wherever this column says so
                </button>`
              : nothing
          }`,
      )}
      ${
        isColumn || isRow
          ? nothing
          : html`<input
              class="short"
              aria-label=${`Line ${line}${head ? `, ${head}` : ""}: another answer`}
              placeholder="it is …"
              @change=${(event: Event) => answer(key, (event.target as HTMLInputElement).value)}
            />`
      }
    </td>
  </tr>`;
}

/** What is asked, each in its line. */
export function questionsView({ questions }: SheetParts, answering: Answering): TemplateResult | typeof nothing {
  if (!questions.length) return nothing;
  const rest = questions.length - mostQuestions;
  return html`<div class="scroll">
    <table>
      <caption class="heard">
        What is not certain
      </caption>
      <thead>
        <tr>
          <th scope="col" class="number">Line</th>
          <th scope="col">Column</th>
          <th scope="col">What is asked</th>
        </tr>
      </thead>
      <tbody>
        ${questions.slice(0, mostQuestions).map((question) => questionView(question, answering))}
      </tbody>
    </table>
    ${rest > 0 ? html`<p class="quiet">${rest} more questions come when these are answered. Their rows are kept as they are.</p>` : nothing}
  </div>`;
}
