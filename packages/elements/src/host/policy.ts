/** What Lit asks of a Trusted Types policy. */
interface MarkupPolicy {
  createHTML(text: string): string;
}

interface PolicyMaker {
  createPolicy(name: string, rules: MarkupPolicy): MarkupPolicy;
}

const identity: MarkupPolicy = { createHTML: (text) => text };
let asked = false;
let policy: MarkupPolicy | undefined;

/** Made once, when a copy of the library has won its names: by then a copy that lost has taken none. */
function markupPolicy(): MarkupPolicy {
  if (policy) return policy;
  const { trustedTypes } = globalThis as { trustedTypes?: PolicyMaker };
  for (const name of trustedTypes ? ["meshwright", "lit-html"] : []) {
    try {
      return (policy = trustedTypes!.createPolicy(name, identity));
    } catch {
      // Not allowed here, or taken: ask for the next.
    }
  }
  return (policy = identity);
}

/**
 * Stands where Lit makes its own policy, in the self-contained script only: the build puts it there. Asks the page for
 * nothing before a template is drawn.
 */
export function litPolicy(): MarkupPolicy {
  asked = true;
  return { createHTML: (text) => markupPolicy().createHTML(text) };
}

/** Whether this page lets the library turn its own templates into elements. */
export function mayDraw(): boolean {
  if (!asked) return true;
  try {
    document.createElement("template").innerHTML = markupPolicy().createHTML("<p></p>");
    return true;
  } catch {
    return false;
  }
}
