const ours = /^(?:id|src|json|mode|permalink)$/;
const global =
  /^(?:class|style|slot|part|exportparts|lang|dir|hidden|nonce|tabindex|translate|role|inert|popover|draggable|spellcheck|accesskey|contenteditable|enterkeyhint|inputmode|is|item.*|autofocus|autocapitalize|(?:data|aria|v|x|ng|hx|sveltekit|_ng.*)-.*|on.*|.*[:@.[\]()].*)$/;

/** Whether an attribute of this name belongs to the notation of a build. */
export const notationName = (name: string): boolean => !ours.test(name) && !global.test(name);
