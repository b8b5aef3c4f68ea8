import { baseKeymap, setBlockType, toggleMark, wrapIn } from "prosemirror-commands";
import { closeHistory, history, redo, undo } from "prosemirror-history";
import { inputRules, textblockTypeInputRule, wrappingInputRule } from "prosemirror-inputrules";
import { keymap } from "prosemirror-keymap";
import { Slice, type Node } from "prosemirror-model";
import { liftListItem, sinkListItem, splitListItem, wrapInList } from "prosemirror-schema-list";
import { EditorState, NodeSelection, type Command, type Plugin } from "prosemirror-state";
import { EditorView, type NodeView } from "prosemirror-view";
import { isHarmless, postFromMarkdown, schema, type BlockAttrs, type FigureAttrs } from "../writing/index.js";

/** What the editor asks of the page around it. */
export interface Around {
  /** What a figure reads as now. */
  readonly textOf: (attrs: FigureAttrs) => string | undefined;
  /** What a figure is, in words. */
  readonly sayOf: (attrs: FigureAttrs) => string;
  /** The post is another. */
  readonly changed: (doc: Node) => void;
  /** Something was typed over a figure. */
  readonly overtyped: (at: number, attrs: FigureAttrs, text: string) => void;
}

/** A figure: its text as it reads now, chosen and removed as one thing. */
class FigureView implements NodeView {
  readonly dom = document.createElement("span");
  readonly #attrs: FigureAttrs;
  readonly #around: Around;
  #say = "";

  constructor(attrs: FigureAttrs, around: Around) {
    this.#attrs = attrs;
    this.#around = around;
    this.dom.className = "figure";
    this.show();
  }

  show(): void {
    const now = this.#around.textOf(this.#attrs);
    const isGone = now === undefined;
    this.dom.textContent = now ?? (this.#attrs.said || "figure is gone");
    this.dom.classList.toggle("gone", isGone);
    // What it is does not change with what it comes to.
    if (!isGone) this.#say ||= this.#around.sayOf(this.#attrs);
    this.dom.title = isGone ? "Follows nothing in the drivetrain: text as it read last" : this.#say;
  }

  ignoreMutation(): boolean {
    return true;
  }
}

/** A picture or table: the element itself, drawn from the notebook's drivetrain. */
class DrawnView implements NodeView {
  readonly dom = document.createElement("div");

  constructor({ tag, ask }: BlockAttrs) {
    this.dom.className = "drawn";
    this.dom.contentEditable = "false";
    const element = document.createElement(tag);
    for (const [name, value] of Object.entries(ask)) element.setAttribute(name, value);
    this.dom.append(element);
  }

  stopEvent(event: Event): boolean {
    return event.type !== "mousedown";
  }

  ignoreMutation(): boolean {
    return true;
  }
}

/** What would bring something from elsewhere while the post is written. */
const fromElsewhere = "iframe, object, embed, video, audio, source, picture, frame";

/** What the editor does not know, as it stands: shown, and chosen and removed as one thing. */
class KeptView implements NodeView {
  readonly dom: HTMLElement;

  constructor(html: string, isInline: boolean) {
    this.dom = document.createElement(isInline ? "span" : "div");
    this.dom.className = "kept";
    this.dom.contentEditable = "false";
    this.dom.title = "Kept as it stands";
    const { body } = new DOMParser().parseFromString(html, "text/html");
    for (const one of body.querySelectorAll(`${fromElsewhere}, script, style, link, meta, base`))
      if (one.isConnected) one.replaceWith(`[${one.localName}]`);
    for (const one of body.querySelectorAll("*"))
      for (const { name, value } of [...one.attributes]) if (!isHarmless(name, value)) one.removeAttribute(name);
    this.dom.append(...body.childNodes);
    if (!this.dom.textContent.trim() && !this.dom.querySelector("img, svg")) this.dom.append(html.slice(0, 60));
  }

  stopEvent(event: Event): boolean {
    return event.type !== "mousedown";
  }

  ignoreMutation(): boolean {
    return true;
  }
}

/** Backspace beside a figure chooses it first; the next one takes it away. */
const chooseBefore: Command = (state, dispatch) => {
  const { $cursor } = state.selection as { $cursor?: EditorState["selection"]["$from"] };
  const node = $cursor?.nodeBefore;
  if (!$cursor || node?.type.name !== "figure") return false;
  dispatch?.(state.tr.setSelection(NodeSelection.create(state.doc, $cursor.pos - node.nodeSize)));
  return true;
};

const { nodes, marks } = schema;

const plugins = (): Plugin[] => [
  history(),
  inputRules({
    rules: [
      textblockTypeInputRule(/^(#{1,3})\s$/, nodes.heading!, ([, signs]) => ({ level: signs!.length })),
      wrappingInputRule(/^\s*>\s$/, nodes.blockquote!),
      wrappingInputRule(/^\s*[-*]\s$/, nodes.bullet_list!),
      wrappingInputRule(/^(\d+)\.\s$/, nodes.ordered_list!, ([, order]) => ({ order: Number(order) })),
    ],
  }),
  keymap({
    "Mod-z": undo,
    "Mod-y": redo,
    "Shift-Mod-z": redo,
    "Mod-b": toggleMark(marks.strong!),
    "Mod-i": toggleMark(marks.em!),
    Enter: splitListItem(nodes.list_item!),
    "Mod-[": liftListItem(nodes.list_item!),
    "Mod-]": sinkListItem(nodes.list_item!),
    Backspace: chooseBefore,
  }),
  keymap(baseKeymap),
];

/** What the bar above the text can do, by name. */
export const commands: Readonly<Record<string, Command>> = {
  text: setBlockType(nodes.paragraph!),
  title: setBlockType(nodes.heading!, { level: 1 }),
  heading: setBlockType(nodes.heading!, { level: 2 }),
  quotation: wrapIn(nodes.blockquote!),
  list: wrapInList(nodes.bullet_list!),
  strong: toggleMark(marks.strong!),
  em: toggleMark(marks.em!),
};

/** The editor of a post. */
export class PostEditor {
  readonly view: EditorView;
  readonly #figures = new Set<FigureView>();

  constructor(place: HTMLElement, doc: Node, around: Around) {
    this.view = new EditorView(place, {
      state: EditorState.create({ doc, plugins: plugins() }),
      attributes: { role: "textbox", "aria-multiline": "true", "aria-label": "The post", spellcheck: "true" },
      nodeViews: {
        figure: (node) => {
          const view = new FigureView(node.attrs as unknown as FigureAttrs, around);
          this.#figures.add(view);
          return view;
        },
        drawn: (node) => new DrawnView(node.attrs as unknown as BlockAttrs),
        kept: (node) => new KeptView(node.attrs.html as string, true),
        kept_block: (node) => new KeptView(node.attrs.html as string, false),
      },
      // Plain text is what people keep their posts in: Markdown.
      clipboardTextParser: (text) => {
        const { content } = postFromMarkdown(text);
        const isOne = content.childCount === 1 && content.firstChild!.type.name === "paragraph";
        return new Slice(content, isOne ? 1 : 0, isOne ? 1 : 0);
      },
      handleTextInput: (view, _from, _to, text) => {
        const { selection } = view.state;
        if (!(selection instanceof NodeSelection) || selection.node.type.name !== "figure") return false;
        around.overtyped(selection.from, selection.node.attrs as unknown as FigureAttrs, text);
        return true;
      },
      dispatchTransaction: (transaction) => {
        this.view.updateState(this.view.state.apply(transaction));
        if (transaction.docChanged) around.changed(this.view.state.doc);
      },
    });
  }

  get doc(): Node {
    return this.view.state.doc;
  }

  /** The drivetrain is another: every figure says what it reads as now. */
  refresh(): void {
    for (const figure of this.#figures)
      if (figure.dom.isConnected) figure.show();
      else this.#figures.delete(figure);
  }

  /** Another post, which has nothing to take back. */
  open(doc: Node): void {
    this.view.updateState(EditorState.create({ doc, plugins: plugins() }));
  }

  /** The same post as somebody else has changed it: what was typed here can still be taken back. */
  follow(doc: Node): void {
    const { state } = this.view;
    const start = state.doc.content.findDiffStart(doc.content);
    const end = state.doc.content.findDiffEnd(doc.content);
    if (start === null || !end) return;
    // What is the same on both sides of a change is counted once.
    const more = Math.max(0, start - Math.min(end.a, end.b));
    const change = state.tr.replace(start, end.a + more, doc.slice(start, end.b + more)).setMeta("addToHistory", false);
    if (change.doc.eq(doc)) this.view.updateState(state.apply(change));
    else this.open(doc);
  }

  /** Another post in the place of this one, as one edit that can be taken back here as well. */
  replace(doc: Node): void {
    const { tr, doc: before } = this.view.state;
    const change = closeHistory(tr.replaceWith(0, before.content.size, doc.content));
    this.view.updateState(this.view.state.apply(change));
    this.view.updateState(this.view.state.apply(closeHistory(this.view.state.tr)));
  }

  run(command: Command): void {
    command(this.view.state, (transaction) => this.view.dispatch(transaction), this.view);
    this.view.focus();
  }

  /** Puts a figure where text stands, or where the cursor is. */
  putFigure(attrs: FigureAttrs, from = this.view.state.selection.from, to = this.view.state.selection.to): void {
    const figure = nodes.figure!.create(attrs);
    this.view.dispatch(this.view.state.tr.replaceRangeWith(from, to, figure));
  }

  putBlock(attrs: BlockAttrs): void {
    const { tr, selection } = this.view.state;
    this.view.dispatch(tr.insert(selection.$to.after(1), nodes.drawn!.create(attrs)));
  }

  putText(at: number, text: string): void {
    this.view.dispatch(this.view.state.tr.replaceWith(at, at + 1, schema.text(text)));
  }

  close(): void {
    this.view.destroy();
  }
}
