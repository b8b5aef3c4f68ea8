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
  /^(?:(?:data|aria|v|x|ng|hx|up|fs|astro|sveltekit|q|_ng[a-z]*|xml|xmlns|jsx|ssr)[-:]|wp-|[@:#*_[(]|.*[.[\]()@:])/;

/** Handlers of events bear no sign of their own: what begins so may be a slip. */
export const isHandler = (name: string): boolean => name.startsWith("on");

/** Whether an attribute is the page's own affair: global in HTML or ARIA, a handler of events, or a framework's. */
export const isPagesOwn = (name: string): boolean => global.has(name) || isHandler(name) || prefixed.test(name);
