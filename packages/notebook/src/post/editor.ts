import { baseKeymap, setBlockType, toggleMark, wrapIn } from "prosemirror-commands";
import { history, redo, undo } from "prosemirror-history";
import { inputRules, textblockTypeInputRule, wrappingInputRule } from "prosemirror-inputrules";
import { keymap } from "prosemirror-keymap";
import { Slice, type Node } from "prosemirror-model";
import { liftListItem, sinkListItem, splitListItem, wrapInList } from "prosemirror-schema-list";
import { EditorState, NodeSelection, type Command, type Plugin } from "prosemirror-state";
import { EditorView, type NodeView } from "prosemirror-view";
import { postFromMarkdown, schema, type BlockAttrs, type FigureAttrs } from "../writing/index.js";

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

  constructor(attrs: FigureAttrs, around: Around) {
    this.#attrs = attrs;
    this.#around = around;
    this.dom.className = "figure";
    this.show();
  }

  show(): void {
    const now = this.#around.textOf(this.#attrs);
    this.dom.textContent = now ?? "figure is gone";
    this.dom.classList.toggle("gone", now === undefined);
    // What it is does not change with what it comes to.
    if (now !== undefined) this.dom.title ||= this.#around.sayOf(this.#attrs);
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

  /** Another post. */
  open(doc: Node): void {
    this.view.updateState(EditorState.create({ doc, plugins: plugins() }));
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
