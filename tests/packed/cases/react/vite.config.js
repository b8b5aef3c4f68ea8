// The library registers its elements in the browser; on the server it is left as it is.
export default { esbuild: { jsx: "automatic" } };
