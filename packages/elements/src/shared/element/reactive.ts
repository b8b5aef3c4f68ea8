/** A style sheet as text: what Lit's `css` makes is one as well. */
export interface Style {
  readonly cssText: string;
}

/** Styles written into a class. */
export const css = (strings: TemplateStringsArray, ...values: readonly Style[]): Style => ({
  cssText: strings.reduce((text, string, n) => text + values[n - 1]!.cssText + string),
});

/** How a property is declared: as an attribute of its own name, unless it is a state of its element's alone. */
export interface Declaration {
  readonly state?: boolean;
  /** There or not, instead of text. */
  readonly type?: BooleanConstructor;
}

type Declarations = Readonly<Record<string, Declaration>>;
type Changed = Map<PropertyKey, unknown>;

// On a server classes are only looked at.
const Base = globalThis.HTMLElement ?? (class {} as typeof HTMLElement);

const known = new WeakMap<object, Declarations>();

/** Frameworks set anything: what is meant to be text becomes text, and what can be none counts as nothing. */
const textOf = (value: unknown): string | null =>
  /^(string|number|boolean)$/.test(typeof value) ? String(value) : null;

/** All that a class and those before it declare; each property is made once, on the prototype of who declares it. */
function declared(type: typeof Reactive): Declarations {
  let all = known.get(type);
  if (all) return all;
  const before = type === Reactive ? {} : declared(Object.getPrototypeOf(type) as typeof Reactive);
  const own = Object.hasOwn(type, "properties") ? type.properties : {};
  known.set(type, (all = { ...before, ...own }));
  for (const [name, { state, type: kind }] of Object.entries(own)) {
    const isPlain = state || kind || name === "json";
    Object.defineProperty(type.prototype, name, {
      configurable: true,
      enumerable: true,
      get(this: Reactive) {
        return this.values.get(name);
      },
      set(this: Reactive, value: unknown) {
        const old = this.values.get(name);
        const next = isPlain ? value : textOf(value);
        this.values.set(name, next);
        if (!Object.is(old, next)) this.requestUpdate(name, old);
      },
    });
  }
  return all;
}

/**
 * An element that draws itself anew, once a turn, when a property or an attribute of the same name is another. It has the
 * names and the order of Lit's own base, of which it needs a small part.
 */
export abstract class Reactive extends Base {
  static properties: Declarations = {};
  static styles: Style | readonly Style[] = [];

  static get observedAttributes(): string[] {
    const all = declared(this);
    return Object.keys(all).filter((name) => !all[name]!.state);
  }

  /** @internal What the properties hold. */
  readonly values = new Map<string, unknown>();
  renderRoot!: ShadowRoot;
  hasUpdated = false;
  /** How often a property was set to something else. */
  protected writes = 0;
  #changed: Changed = new Map();
  #pending: Promise<void> | undefined;
  #ready!: () => void;
  readonly #connected = new Promise<void>((resolve) => (this.#ready = resolve));
  /** Attributes that are told of once after what was set over them. */
  #over: Set<string> | undefined;

  constructor() {
    super();
    // What was set before the class was known hides the properties of the class, and is younger than the attributes.
    const all = declared(this.constructor as typeof Reactive);
    for (const name of Object.keys(this))
      if (Object.hasOwn(all, name)) {
        const own = this as unknown as Record<string, unknown>;
        const value = own[name];
        delete own[name];
        own[name] = value;
        if (this.hasAttribute(name)) (this.#over ??= new Set()).add(name);
      }
    this.requestUpdate();
  }

  /** Settled once all that was asked for by now is drawn. */
  get updateComplete(): Promise<boolean> {
    return (async () => {
      await this.#pending;
      return !this.#pending;
    })();
  }

  attributeChangedCallback(name: string, _: string | null, value: string | null): void {
    if (this.#over?.delete(name)) return;
    const { type } = declared(this.constructor as typeof Reactive)[name]!;
    (this as unknown as Record<string, unknown>)[name] = type ? value !== null : value;
  }

  connectedCallback(): void {
    this.renderRoot ??= this.createRenderRoot();
    this.#ready();
  }

  disconnectedCallback(): void {}

  protected abstract createRenderRoot(): ShadowRoot;

  requestUpdate(name?: PropertyKey, old?: unknown): void {
    if (name !== undefined) {
      this.writes++;
      if (!this.#changed.has(name)) this.#changed.set(name, old);
    }
    this.#pending ??= this.#connected.then(() => this.#perform());
  }

  #perform(): void {
    const changed = this.#changed;
    try {
      if (this.shouldUpdate(changed)) {
        this.willUpdate(changed);
        this.update(changed);
        this.hasUpdated = true;
        this.updated(changed);
      }
    } finally {
      // Where nothing was drawn, what is asked for next is another turn's all the same.
      if (this.#changed === changed) this.#settle();
    }
  }

  #settle(): void {
    this.#changed = new Map();
    this.#pending = undefined;
  }

  protected shouldUpdate(_: Changed): boolean {
    return true;
  }

  protected willUpdate(_: Changed): void {}

  /** Draws. What is set from here on is drawn in another turn. */
  protected update(_: Changed): void {
    this.#settle();
  }

  protected updated(_: Changed): void {}
}
