// @ts-check
import { dirname, resolve } from "node:path";
import { fileURLToPath } from "node:url";

/** The folder that holds package.json. */
export const repository = resolve(dirname(fileURLToPath(import.meta.url)), "../..");
