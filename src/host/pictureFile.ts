/** Files that can be put under the plan: how their names end, and what is said of one that is too large to read. */
import { limits } from "./bridge";
import type { HostFailure } from "./host";

export const pictureEndings = ["png", "jpg", "jpeg", "webp", "pdf"] as const;

export function isPictureName(name: string): boolean {
  return pictureEndings.some((ending) => name.toLowerCase().endsWith(`.${ending}`));
}

/** Why a file of so many bytes isn't read; null where it may be. */
export function tooLarge(name: string, bytes: number): HostFailure | null {
  if (bytes <= limits.pictureBytes) return null;
  const megabytes = (count: number) => `${Math.ceil(count / 1e6)} MB`;
  return {
    failed: `“${name}” has ${megabytes(bytes)}; a picture under the plan may have ${megabytes(limits.pictureBytes)}. Save it smaller, or cut out the part that you need.`,
  };
}
