import { html, nothing, type TemplateResult } from "lit";
import { download } from "../frame/index.js";
import { fileName, type Session } from "../model/index.js";
import { pictureOf, pictureSizes, type Picture } from "../writing/index.js";

/** A picture drawn into dots; nothing where the page's policy lets it draw no picture of its own. */
export async function pngOf({ svg, width, height }: Picture): Promise<Blob | undefined> {
  const address = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
  try {
    const image = new Image(width, height);
    image.src = address;
    await image.decode();
    const canvas = document.createElement("canvas");
    Object.assign(canvas, { width, height });
    canvas.getContext("2d")!.drawImage(image, 0, 0, width, height);
    return await new Promise((done) => canvas.toBlob((blob) => done(blob ?? undefined), "image/png"));
  } catch {
    return undefined;
  } finally {
    URL.revokeObjectURL(address);
  }
}

/** Pictures of the drivetrain, made when they are asked for. */
export function picturesView(
  session: Session,
  on: {
    readonly png: (picture: Picture) => void;
    readonly copy: (text: string) => void;
    readonly said: string | undefined;
  },
): TemplateResult {
  const { notebook, today } = session;
  const before = notebook.versions?.at(-1)?.build;
  const made = (name: keyof typeof pictureSizes): Picture | undefined =>
    notebook.build && pictureOf(name, notebook.build, { before, note: today });
  const save = (name: keyof typeof pictureSizes): void => {
    const picture = made(name);
    if (picture) download(fileName(notebook, `${name}.svg`), picture.svg, "image/svg+xml");
  };
  const png = (name: keyof typeof pictureSizes): void => {
    const picture = made(name);
    if (picture) on.png(picture);
  };
  return html`<h3>Pictures</h3>
    <p class="quiet">
      The line of drive with its totals${before ? ", and what they were in the version kept last" : ""}.
    </p>
    ${(Object.keys(pictureSizes) as (keyof typeof pictureSizes)[]).map(
      (name) =>
        html`<p>
          ${pictureSizes[name].say}:
          <button
            type="button"
            aria-label=${`Save the picture ${pictureSizes[name].say}, as SVG`}
            @click=${() => save(name)}
          >
            SVG
          </button>
          <button
            type="button"
            aria-label=${`Save the picture ${pictureSizes[name].say}, as PNG`}
            @click=${() => png(name)}
          >
            PNG
          </button>
        </p>`,
    )}
    <p>
      <button type="button" @click=${() => on.copy(made("preview")?.description ?? "")}>
        Copy its description, for whoever does not see it
      </button>
      ${on.said ? html`<span class="fault" role="alert">${on.said}</span>` : nothing}
    </p>`;
}
