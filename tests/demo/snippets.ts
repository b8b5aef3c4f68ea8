/**
 * Runs in a page of the guide: pastes below each piece of HTML that can be copied what it says, as a reader would, and tells what
 * does not live. Those without a build of their own speak of the one before them.
 */
export async function pastedHere(): Promise<readonly string[]> {
  interface Build extends HTMLElement {
    readonly checked: Promise<readonly { readonly message: string }[]>;
  }
  const places = [...document.querySelectorAll('code[data-snippet="html"]')].map((code) => {
    const place = document.createElement("section");
    place.innerHTML = code.textContent;
    // A frame's address leads to somebody's site.
    for (const frame of place.querySelectorAll("iframe")) frame.remove();
    code.parentElement!.after(place);
    return place;
  });
  const builds = places.flatMap((place) => [...place.querySelectorAll<Build>("mw-build:not([src])")]);
  const told = (await Promise.all(builds.map(({ checked }) => checked))).flat().map(({ message }) => message);
  await new Promise((resolve) => setTimeout(resolve, 50));
  const dead = places
    .flatMap((place) => [...place.querySelectorAll<HTMLElement>("*")])
    .filter(
      ({ localName, shadowRoot }) =>
        localName.startsWith("mw-") && localName !== "mw-build" && !shadowRoot?.childElementCount,
    )
    .map(({ outerHTML }) => outerHTML.slice(0, 120));
  return [...told, ...dead];
}
