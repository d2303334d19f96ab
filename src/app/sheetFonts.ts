/** The typeface's files, fetched from the build for the sheets. */
import regularAddress from "../../assets/fonts/SourceSans3-Regular.ttf?url";
import semiboldAddress from "../../assets/fonts/SourceSans3-SemiBold.ttf?url";

async function bytesAt(address: string): Promise<Uint8Array<ArrayBuffer>> {
  const answer = await fetch(address);
  if (!answer.ok) throw new Error(`The typeface could not be read (${answer.status}).`);
  return new Uint8Array(await answer.arrayBuffer());
}

export async function sheetFonts() {
  const [regular, semibold] = await Promise.all([bytesAt(regularAddress), bytesAt(semiboldAddress)]);
  return { regular, semibold };
}
