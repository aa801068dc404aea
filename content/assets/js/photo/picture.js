/**
 * A picture as it is kept: scaled, and written afresh from its pixels alone, so that nothing a camera wrote into its
 * file (place, time, device) comes along.
 */
import { fitted, LONGEST, SMALL } from "./measure.js";

const TYPE = "image/jpeg";
const QUALITY = 0.8;

/** @typedef {{bytes: ArrayBuffer, small: string, width: number, height: number}} Picture `small` as a data address */

/**
 * @param {Blob} file
 * @returns {Promise<Picture | null>} null where it is no picture that this browser can read
 */
export async function pictureOf(file) {
  const read = await createImageBitmap(file, { imageOrientation: "from-image" })
    .catch(() => createImageBitmap(file)) // where the browser does not know that it may be asked
    .catch(() => null);
  if (!read) return null;
  try {
    const whole = drawn(read, LONGEST);
    const blob = await new Promise((done) => whole.toBlob(done, TYPE, QUALITY));
    const small = drawn(whole, SMALL).toDataURL(TYPE, QUALITY);
    if (blob?.type !== TYPE || !small.startsWith(`data:${TYPE}`)) return null;
    return { bytes: await blob.arrayBuffer(), small, width: whole.width, height: whole.height };
  } catch {
    return null; // too large for a canvas of this browser
  } finally {
    read.close();
  }
}

/** @param {ImageBitmap | HTMLCanvasElement} image @param {number} longest */
function drawn(image, longest) {
  const { width, height } = fitted(image.width, image.height, longest);
  const canvas = Object.assign(document.createElement("canvas"), { width, height });
  const pen = canvas.getContext("2d");
  if (!pen) throw new Error("no canvas");
  pen.fillStyle = "white"; // where it is clear, a JPEG would be black
  pen.fillRect(0, 0, width, height);
  pen.imageSmoothingQuality = "high";
  pen.drawImage(image, 0, 0, width, height);
  return canvas;
}

/** A kept picture as a data address, which the policy of the pages lets be shown. @param {ArrayBuffer} bytes */
export const addressOf = (bytes) =>
  /** @type {Promise<string>} */ (
    new Promise((resolve, reject) => {
      const reader = new FileReader();
      reader.onload = () => resolve(String(reader.result));
      reader.onerror = () => reject(reader.error);
      reader.readAsDataURL(new Blob([bytes], { type: TYPE }));
    })
  );
