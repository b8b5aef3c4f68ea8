import { render as renderComponent } from "svelte/server";
import App from "./App.svelte";

export const render = (): string => renderComponent(App).body;
