/** What Lit asks of a Trusted Types policy. */
interface MarkupPolicy {
  createHTML(text: string): string;
  createScriptURL(address: string): string;
}

interface PolicyMaker {
  createPolicy(name: string, rules: MarkupPolicy): MarkupPolicy;
}

const identity: MarkupPolicy = { createHTML: (text) => text, createScriptURL: (address) => address };
const markup = '<p a$="b"><!--c--></p>';
let asked = false;
let policy: MarkupPolicy | undefined;

/** Whether markup comes through: a page may refuse it, or have a default policy that takes the marks of templates out. */
function passes(through: MarkupPolicy): boolean {
  try {
    const template = document.createElement("template");
    template.innerHTML = through.createHTML(markup);
    return template.innerHTML === markup;
  } catch {
    return false;
  }
}

/** Made once, when a copy of the library has won its names: by then a copy that lost has taken none. */
function markupPolicy(): MarkupPolicy {
  if (policy) return policy;
  const { trustedTypes } = globalThis as { trustedTypes?: PolicyMaker };
  for (const name of trustedTypes ? ["meshwright", "lit-html"] : []) {
    // Another bundle of Lit may come later and die where its name is taken: only where nothing else passes.
    if (name !== "meshwright" && passes(identity)) break;
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
export function litPolicy(): Pick<MarkupPolicy, "createHTML"> {
  asked = true;
  return { createHTML: (text) => markupPolicy().createHTML(text) };
}

/** Whether this page lets the library turn its own templates into elements: where a page is XML, none of them comes through. */
export const mayDraw = (): boolean => !/xml/.test(document.contentType) && (!asked || passes(markupPolicy()));

/** The address of a file of the library's own, as the page wants it said. */
export const scriptAddress = (address: string): string => markupPolicy().createScriptURL(address);
