import { css, html, nothing, type TemplateResult } from "lit";
import type { Change, Mount } from "@meshwright/calc/drivetrain";
import { drives, NotebookPart, sheet } from "../frame/index.js";
import { lengthFault, typedLength, withPoint } from "../model/index.js";

/** How a mount can be known, and with what it begins. */
const ways = {
  "": ["not known", undefined],
  slot: ["in a slot", {}],
  known: ["by a pair that is known to fit", {}],
  holes: ["in a row of holes", {}],
  pivot: ["on a pivot", {}],
} as const;
type Way = keyof typeof ways;

const wayOf = (mount: Mount | undefined): Way =>
  !mount ? "" : mount.knownPair ? "known" : mount.holes ? "holes" : mount.pivot ? "pivot" : "slot";

/**
 * How a pair's centre distance can be set, as people measure it, and whether the pair fits.
 *
 * @attr of - the pair's stage
 */
export class MwNotebookMount extends NotebookPart {
  static readonly tag = "mw-notebook-mount";
  static override styles = [
    sheet,
    css`
      input.short {
        width: 5.4em;
      }
    `,
  ];
  static override properties = { of: {}, way: { state: true } };

  declare of: string;
  /** The way that was chosen and is not filled in yet. */
  declare private way: Way | undefined;

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    super.willUpdate(changed);
    if (changed.has("of")) this.way = undefined;
  }

  get #index(): number {
    return this.build?.mounts?.findIndex(({ stage }) => stage === this.of) ?? -1;
  }

  get #mount(): Mount | undefined {
    return this.build?.mounts?.[this.#index];
  }

  /** The mounts with this one changed. */
  #with(fields: Record<string, unknown>): readonly Change[] {
    const mounts = [...(this.build?.mounts ?? [])];
    const before = this.#mount ?? { stage: this.of };
    const next = Object.fromEntries(
      Object.entries({ ...before, ...fields }).filter(([, value]) => value !== null && value !== undefined),
    );
    const index = this.#index;
    if (index < 0) mounts.push(next as unknown as Mount);
    else mounts[index] = next as unknown as Mount;
    return [{ set: "mounts", to: mounts }];
  }

  readonly #way = (event: Event): void => {
    const way = (event.target as HTMLSelectElement).value as Way;
    const others = (this.build?.mounts ?? []).filter(({ stage }) => stage !== this.of);
    this.way = way;
    if (this.#mount) this.ask("way", [{ set: "mounts", to: others.length ? others : null }], `Mount ${ways[way][0]}`);
  };

  /** A blank of the mount's sentence. A length without a unit is in millimetres. */
  #blank(field: keyof Mount, label: string, needed: readonly (keyof Mount)[] = []): TemplateResult {
    const value = this.#mount?.[field] ?? this.#draft[field] ?? "";
    const place = `mount.${field}`;
    const take = (event: Event): void => {
      const input = event.target as HTMLInputElement;
      const typed = withPoint(input.value);
      const unclear = lengthFault(input.value);
      if (unclear) return this.blame(place, unclear);
      const length = /^\d+(\.\d+)?$/.test(typed) ? `${typed} mm` : typed;
      this.#draft[field] = length || undefined;
      const all = { ...this.#draft, [field]: length || null };
      const isWhole = needed.every((name) => this.#mount?.[name] ?? all[name]);
      this.blame(place);
      if (!isWhole) return this.requestUpdate();
      if (this.ask(place, this.#with(all), `Mount, ${label.toLowerCase()} ${length}`)) this.#draft = {};
    };
    return html`<input
        class="short"
        aria-label=${label}
        autocomplete="off"
        placeholder="mm"
        .value=${String(value)}
        @change=${take}
      />${this.#sentence(place)}`;
  }

  #draft: Record<string, unknown> = {};

  #sentence(place: string): TemplateResult | typeof nothing {
    return this.faults[place] ? html`<span class="fault" role="alert"> ${this.faults[place]} </span>` : nothing;
  }

  readonly #pair = (event: Event): void => {
    const root = this.renderRoot;
    const pair = ["pairDriver", "pairDriven"].map((name) =>
      root.querySelector<HTMLInputElement>(`[name=${name}]`)!.value.trim(),
    );
    if (!pair.every((count) => /^[1-9]\d*$/.test(count))) return;
    event.stopPropagation();
    const moves = this.#mount?.knownPair ? {} : { closer: "0 mm", farther: "0 mm" };
    this.ask("mount.pair", this.#with({ ...moves, knownPair: pair.map(Number) }), `Known pair ${pair.join(" → ")}`);
  };

  readonly #holes = (event: Event): void => {
    const input = event.target as HTMLInputElement;
    const holes = input.value
      .split(/[;\s]*[;]\s*|\s*,\s+|\s+(?=\d)/)
      .map((one) => one.trim())
      .filter(Boolean);
    // What is no length is told by the drivetrain.
    const lengths = holes.map((one) => typedLength(one) ?? one);
    this.ask("mount.holes", this.#with({ holes: lengths.length ? lengths : null }), "Mount's holes");
  };

  readonly #pivot = (): void => {
    const value = (name: string) => this.renderRoot.querySelector<HTMLInputElement>(`[name=${name}]`)!.value.trim();
    const [distance, arm, from, to] = ["distance", "arm", "from", "to"].map(value) as [string, string, string, string];
    if (!distance || !arm || !from || !to) return;
    const inMm = (text: string): string => typedLength(text) ?? text;
    this.ask(
      "mount.pivot",
      this.#with({ pivot: { distance: inMm(distance), arm: inMm(arm), from: withPoint(from), to: withPoint(to) } }),
      "Mount's pivot",
    );
  };

  #how(way: Way): TemplateResult | typeof nothing {
    const mount = this.#mount;
    const count = (name: string, value: number | undefined, label: string) =>
      html`<input
        class="count"
        name=${name}
        inputmode="numeric"
        autocomplete="off"
        aria-label=${label}
        .value=${String(value ?? "")}
        @change=${this.#pair}
      />`;
    if (way === "slot")
      return html`From ${this.#blank("from", "Slot from", ["from", "to"])} to
        ${this.#blank("to", "Slot to", ["from", "to"])}, measured
        <select
          aria-label="Measured"
          @change=${(event: Event) => this.ask("mount.measured", this.#with({ measured: (event.target as HTMLSelectElement).value }))}
        >
          ${["between axes", "over shafts", "between shafts"].map((one) => html`<option ?selected=${(mount?.measured ?? "between axes") === one}>${one}</option>`)}</select
        >${mount?.measured && mount.measured !== "between axes" ? html`, shafts ${this.#blank("shaft", "The driver's shaft")} and ${this.#blank("drivenShaft", "The driven gear's shaft")}` : nothing}.
        ${this.#sentence("mount.measured")}`;
    if (way === "known")
      return html`The pair
      ${count("pairDriver", mount?.knownPair?.[0], "Known pair, driver")}${drives}${count("pairDriven", mount?.knownPair?.[1], "Known pair, driven")}
      is known to
      fit${mount?.knownPair ? html`; from there it can move ${this.#blank("closer", "Closer")} closer and ${this.#blank("farther", "Farther")} farther` : nothing}.
      ${this.#sentence("mount.pair")}`;
    if (way === "holes")
      return html`Centre distances of the holes:
        <input
          class="wide"
          aria-label="Centre distances of the holes"
          placeholder="30.4 mm; 31.2 mm; 32 mm"
          .value=${(mount?.holes ?? []).join("; ")}
          @change=${this.#holes}
        />
        ${this.#sentence("mount.holes")}`;
    if (way === "pivot") {
      const { distance, arm, from, to } = mount?.pivot ?? {};
      const blank = (name: string, label: string, value: unknown, unit: string) =>
        html`<input
          class="short"
          name=${name}
          aria-label=${label}
          placeholder=${unit}
          .value=${String(value ?? "")}
          @change=${this.#pivot}
        />`;
      return html`The pivot is ${blank("distance", "Pivot to the driven gear's axis", distance, "mm")} from the driven
      gear’s axis, the motor ${blank("arm", "Motor's axis to the pivot", arm, "mm")} from the pivot; it swings from
      ${blank("from", "Angle from", from, "°")} to ${blank("to", "Angle to", to, "°")} degrees.
      ${this.#sentence("mount.pivot")}`;
    }
    return nothing;
  }

  #verdict(): TemplateResult | typeof nothing {
    const { of } = this;
    const centre = this.figure({ figure: "centre", of });
    const slot = this.figure({ figure: "slot", of });
    const fit = this.figure({ figure: "fit", of });
    const shortfall = this.figure({ figure: "shortfall", of });
    const play = this.figure({ figure: "backlash", of });
    if (!centre) return html`<p class="quiet">Say the pitch, and what fits is worked out.</p>`;
    if (!this.#mount)
      return html`<p>
        They need <b>${centre}</b> between centres. How the motor is held is not known, and so it cannot be told whether
        they fit.
      </p>`;
    return html`<p>
      They need <b>${centre}</b> between centres.
      ${slot ? html`The mount sets ${slot}: <b class=${shortfall && shortfall !== fit ? "fault" : ""}>${fit}</b>${shortfall && shortfall !== fit ? html`, ${shortfall}` : nothing}.` : nothing}
      ${play && this.#mount?.opening ? html`Play between the teeth, straight across: ${play}.` : nothing}
    </p>`;
  }

  protected override render(): TemplateResult {
    const way = this.#mount ? wayOf(this.#mount) : (this.way ?? "");
    return html`<h3>How it is mounted</h3>
      <p>
        The motor is held
        <select aria-label="How the motor is held" @change=${this.#way}>
          ${Object.entries(ways).map(([value, [text]]) => html`<option value=${value} ?selected=${value === way}>${text}</option>`)}</select
        >. ${this.#how(way)}
        ${this.#mount ? html`It is set ${this.#blank("opening", "Opening from tight")} from tight.` : nothing}
      </p>
      ${this.fault("way")} ${this.#verdict()}`;
  }
}
