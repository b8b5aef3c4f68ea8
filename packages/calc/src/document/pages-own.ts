/** Attributes that HTML gives to every element. */
const global = new Set(
  (
    "accesskey autocapitalize autocorrect autofocus class contenteditable dir draggable enterkeyhint exportparts hidden id " +
    "inert inputmode is itemid itemprop itemref itemscope itemtype lang nonce part popover role slot spellcheck style " +
    "tabindex title translate virtualkeyboardpolicy writingsuggestions xmlns key ref jsaction jscontroller jsname"
  ).split(" "),
);

/** What ARIA, scripts and frameworks put on elements that they know nothing of. */
const prefixed =
  /^(?:(?:data|aria|v|x|ng|hx|up|fs|astro|sveltekit|q|_ng[a-z]*|xml|xmlns|jsx|ssr)[-:]|on|wp-|[@:#*_[(]|.*[.[\]()@:])/;

/** Whether an attribute is the page's own affair: global in HTML or ARIA, or a framework's. */
export const isPagesOwn = (name: string): boolean => global.has(name) || prefixed.test(name);
