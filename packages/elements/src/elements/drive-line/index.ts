export { MwDriveLine } from "./mw-drive-line.js";
export { type LinePicture, linePicture, type PictureOptions } from "./picture.js";
