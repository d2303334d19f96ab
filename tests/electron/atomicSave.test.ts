import * as disk from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type FileActs, saveAtomically } from "../../electron/atomicSave";

let folder: string;
let file: string;

beforeEach(async () => {
  folder = await disk.mkdtemp(join(tmpdir(), "drysill-save-"));
  await disk.chmod(folder, 0o777);
  file = join(folder, "studio.drysill.json");
});
afterEach(() => disk.rm(folder, { recursive: true, force: true }));

const read = (path = file) => disk.readFile(path, "utf8");

function systemError(code: string): Error {
  return Object.assign(new Error(`${code}: simulated`), { code });
}

describe("saving a file", () => {
  it("makes a new one, text or bytes, and leaves nothing else behind", async () => {
    await saveAtomically(file, "a plan");
    await saveAtomically(join(folder, "plan.pdf"), new Uint8Array([37, 80]));
    expect(await read()).toBe("a plan");
    expect([...(await disk.readFile(join(folder, "plan.pdf")))]).toEqual([37, 80]);
    expect(await disk.readdir(folder)).toEqual(["plan.pdf", "studio.drysill.json"]);
  });

  it("keeps the old file's permissions", async () => {
    await disk.writeFile(file, "old");
    await disk.chmod(file, 0o640);
    await saveAtomically(file, "new");
    expect((await disk.stat(file)).mode & 0o777).toBe(0o640);
    expect(await read()).toBe("new");
  });

  it("writes through a link, which stays a link", async () => {
    const kept = join(folder, "kept.json");
    await disk.writeFile(kept, "old");
    await disk.symlink(kept, file);
    await saveAtomically(file, "new");
    expect((await disk.lstat(file)).isSymbolicLink()).toBe(true);
    expect(await read(kept)).toBe("new");
  });

  it("manages a name as long as the system allows", async () => {
    const long = join(folder, `${"n".repeat(250)}.json`);
    await saveAtomically(long, "new");
    expect(await read(long)).toBe("new");
  });
});

describe("a save that fails", () => {
  beforeEach(() => disk.writeFile(file, "the old plan"));

  const expectOldPlanAlone = async () => {
    expect(await read()).toBe("the old plan");
    expect(await disk.readdir(folder)).toEqual(["studio.drysill.json"]);
  };

  it("between writing and renaming leaves the old file whole", async () => {
    const files: FileActs = { ...disk, rename: () => Promise.reject(systemError("EIO")) };
    await expect(saveAtomically(file, "new", files)).rejects.toMatchObject({ code: "EIO" });
    await expectOldPlanAlone();
  });

  it("by the program dying before the rename leaves the old file whole, and the next save works", async () => {
    let written: (text: string) => void;
    const reached = new Promise<string>((resolve) => {
      written = resolve;
    });
    const rename: FileActs["rename"] = async (from) => {
      written(await read(String(from)));
      return new Promise(() => undefined);
    };
    void saveAtomically(file, "new", { ...disk, rename });
    expect(await reached).toBe("new");
    expect(await read()).toBe("the old plan");
    await saveAtomically(file, "newer");
    expect(await read()).toBe("newer");
  });

  it("on a full disk half way through leaves the old file whole and no rubbish", async () => {
    const open: FileActs["open"] = async (path, flags, mode) => {
      const handle = await disk.open(path, flags, mode);
      handle.writeFile = async () => {
        await handle.write("half a pl");
        throw systemError("ENOSPC");
      };
      return handle;
    };
    await expect(saveAtomically(file, "half a plan", { ...disk, open })).rejects.toMatchObject({
      code: "ENOSPC",
    });
    await expectOldPlanAlone();
  });

  it("when the flush to disk fails leaves the old file whole", async () => {
    const open: FileActs["open"] = async (path, flags, mode) => {
      const handle = await disk.open(path, flags, mode);
      handle.sync = () => Promise.reject(systemError("EIO"));
      return handle;
    };
    await expect(saveAtomically(file, "new", { ...disk, open })).rejects.toMatchObject({ code: "EIO" });
    await expectOldPlanAlone();
  });

  it("in a folder that is gone says so", async () => {
    const lost = join(folder, "gone", "plan.json");
    await expect(saveAtomically(lost, "new")).rejects.toMatchObject({ code: "ENOENT" });
  });

  it("in a read-only folder changes nothing", async () => {
    await disk.chmod(folder, 0o555);
    await asOrdinaryUser(async () => {
      await expect(saveAtomically(file, "new")).rejects.toMatchObject({ code: "EACCES" });
    });
    await expectOldPlanAlone();
  });

  it("refuses a file that is marked read-only, though the folder isn't", async () => {
    await disk.chmod(file, 0o444);
    await asOrdinaryUser(async () => {
      await expect(saveAtomically(file, "new")).rejects.toMatchObject({ code: "EACCES" });
    });
    await expectOldPlanAlone();
  });
});

/** Root may write anywhere, so as root the act runs under another user's rights. */
async function asOrdinaryUser(act: () => Promise<void>): Promise<void> {
  if (process.geteuid?.() !== 0) return act();
  process.seteuid?.(65534);
  try {
    await act();
  } finally {
    process.seteuid?.(0);
  }
}
