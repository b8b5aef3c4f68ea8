import vue from "@vitejs/plugin-vue";

const isCustomElement = (tag) => tag.startsWith("mw-");

export default { plugins: [vue({ template: { compilerOptions: { isCustomElement } } })] };
