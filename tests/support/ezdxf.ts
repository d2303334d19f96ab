/** ezdxf for the tests: put once into the folder that isn't kept, by Python's own installer. */
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";

const repository = resolve(import.meta.dirname, "../..");
const VERSION = "1.4.5";
const folder = join(repository, ".cache", "python", `ezdxf-${VERSION}`);
const script = join(import.meta.dirname, "python", "audit_dxf.py");

export interface DxfAudit {
  readonly errors: readonly string[];
  readonly fixes: readonly string[];
  readonly version: string;
  readonly units: number;
  readonly points: readonly [string, number, number, number][];
  readonly faces: readonly (readonly [number, number, number])[][];
  readonly polylines: readonly { layer: string; closed: boolean; corners: number[][] }[];
  readonly contours: readonly { height: number; closed: boolean; corners: number[][] }[];
}

/** Why ezdxf can't be had, or null when it is there. With CI=true that is an error. */
export function missingEzdxf(): string | null {
  if (existsSync(join(folder, "ezdxf"))) return null;
  const half = `${folder}.${process.pid}.part`;
  const made = spawnSync(
    "python3",
    ["-m", "pip", "install", "--quiet", "--target", half, `ezdxf==${VERSION}`],
    {
      encoding: "utf8",
      timeout: 180_000,
    },
  );
  if (made.status === 0) {
    renameSync(half, folder);
    return null;
  }
  rmSync(half, { recursive: true, force: true });
  const why = made.error?.message ?? made.stderr.trim().split("\n").at(-1) ?? "";
  const message = `ezdxf ${VERSION}, which audits the DXF files, can't be installed: ${why}. It needs Python 3 with pip.`;
  if (process.env.CI) throw new Error(message);
  return message;
}

/** What ezdxf makes of a drawing. */
export function auditDxf(text: string): DxfAudit {
  const place = mkdtempSync(join(tmpdir(), "drysill-dxf-"));
  try {
    const file = join(place, "drawing.dxf");
    writeFileSync(file, text);
    const run = spawnSync("python3", [script, file], {
      encoding: "utf8",
      env: { ...process.env, PYTHONPATH: folder },
      maxBuffer: 1 << 28,
    });
    if (run.status !== 0)
      throw new Error(`ezdxf can't read the drawing: ${run.stderr || run.error?.message}`);
    return JSON.parse(run.stdout);
  } finally {
    rmSync(place, { recursive: true, force: true });
  }
}
