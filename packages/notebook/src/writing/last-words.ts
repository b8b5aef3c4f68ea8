import type { Build } from "@meshwright/calc/drivetrain";
import { figureText } from "./figures.js";
import { blockHtml, Elements } from "./html.js";
import type { BlockAttrs, FigureAttrs } from "./schema.js";

/** A node of a post as it is kept. */
interface Kept {
  readonly type: string;
  readonly attrs?: Readonly<Record<string, unknown>>;
  readonly content?: readonly Kept[];
}

/**
 * A post after an edit of its drivetrain: a figure that has no answer any more keeps what it said last. The same post where none
 * has lost its answer.
 */
export function withLastWords<Post extends Kept>(post: Post, before: Build, after: Build): Post {
  const saidBy = (build: Build, { type, attrs }: Kept): string | undefined => {
    const asked = { ...attrs, ask: attrs?.ask ?? {} } as unknown;
    return type === "figure" ? figureText(build, asked as FigureAttrs) : blockHtml(build, asked as BlockAttrs);
  };
  if ((post.type === "figure" || post.type === "drawn") && saidBy(after, post) === undefined) {
    const said = saidBy(before, post);
    return said === undefined ? post : { ...post, attrs: { ...post.attrs, said } };
  }
  if (post.type === "kept" || post.type === "kept_block") {
    const html = String(post.attrs?.html ?? "");
    const was = new Elements(before).kept(html);
    const now = new Elements(after);
    return now.kept(was) === now.kept(html) ? post : { ...post, attrs: { ...post.attrs, html: was } };
  }
  if (!post.content) return post;
  const content = post.content.map((one) => withLastWords(one, before, after));
  return content.every((one, n) => one === post.content![n]) ? post : { ...post, content };
}
