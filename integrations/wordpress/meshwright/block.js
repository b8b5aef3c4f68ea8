// The block of Meshwright is WordPress's own block of HTML: what is saved is the post's HTML and nothing of ours, so that it stays
// whole without this plugin. Added are a paste from the notebook and the figures alive under it.
(function (wp, given) {
  const { createElement: el, Fragment, useEffect, useRef } = wp.element;
  const isOurs = (html) => /<mw-[a-z]/i.test(html || "");
  const escaped = (text) => String(text).replace(/&/g, "&amp;").replace(/"/g, "&quot;");
  const line = `<script src="${escaped(given.script)}" integrity="${escaped(given.hash)}" crossorigin="anonymous"></script>`;

  wp.blocks.registerBlockVariation("core/html", {
    name: "meshwright",
    title: "Meshwright",
    description: "A post, or a part of one, from the notebook. Paste what it copies.",
    icon: "admin-generic",
    keywords: ["drivetrain", "gears", "figures"],
    attributes: { content: "" },
    isActive: ({ content }) => isOurs(content),
    scope: ["inserter"],
  });

  // A paste from the notebook is taken whole wherever it lands; the editor would take the tags out of it.
  const watched = new WeakSet();
  function take(event) {
    const text = event.clipboardData?.getData("text/plain") ?? "";
    if (!isOurs(text) || event.target.closest?.("textarea, input, .mce-content-body")) return;
    event.preventDefault();
    event.stopPropagation();
    const editor = wp.data.select("core/block-editor");
    const { insertBlocks, replaceBlocks } = wp.data.dispatch("core/block-editor");
    const block = wp.blocks.createBlock("core/html", { content: text.trim() });
    const chosen = editor.getSelectedBlock();
    if (chosen && wp.blocks.isUnmodifiedDefaultBlock(chosen)) replaceBlocks(chosen.clientId, block);
    else
      insertBlocks(
        block,
        chosen ? editor.getBlockIndex(chosen.clientId) + 1 : undefined,
        chosen ? editor.getBlockRootClientId(chosen.clientId) : undefined,
      );
  }
  function watch(page) {
    if (!page || watched.has(page)) return;
    watched.add(page);
    page.addEventListener("paste", take, true);
  }
  watch(document);

  const alive = wp.compose.createHigherOrderComponent(
    (Edit) =>
      function WithFigures(props) {
        const place = useRef();
        useEffect(() => watch(place.current?.ownerDocument), []);
        const content = props.name === "core/html" ? props.attributes.content : undefined;
        const shown = isOurs(content)
          ? el(
              "div",
              {
                className: "meshwright-alive",
                style: { borderTop: "1px solid", paddingTop: 8, maxHeight: 480, overflow: "auto" },
              },
              el(wp.components.SandBox, { html: `${content}${line}`, title: "The figures, alive", type: "meshwright" }),
            )
          : null;
        return el(Fragment, null, el("span", { ref: place, hidden: true }), el(Edit, props), shown);
      },
    "withMeshwright",
  );
  wp.hooks.addFilter("editor.BlockEdit", "meshwright/alive", alive);
})(window.wp, window.meshwrightBlock);
