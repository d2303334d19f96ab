/** The parts of the File System Access API that TypeScript's page types leave out. Not every browser has them. */
interface FileType {
  readonly description: string;
  readonly accept: Record<string, readonly string[]>;
}

export interface FilePickers {
  showOpenFilePicker(options: { types: FileType[] }): Promise<FileSystemFileHandle[]>;
  showSaveFilePicker(options: { suggestedName: string; types?: FileType[] }): Promise<FileSystemFileHandle>;
}

type Access = { readonly mode: "read" | "readwrite" };

interface PermittedHandle {
  queryPermission?(access: Access): Promise<PermissionState>;
  requestPermission?(access: Access): Promise<PermissionState>;
}

export const projectType: FileType = {
  description: "Drysill plan",
  accept: { "application/json": [".json"] },
};

export const pictureType: FileType = {
  description: "Picture or PDF",
  accept: {
    "image/png": [".png"],
    "image/jpeg": [".jpg", ".jpeg"],
    "image/webp": [".webp"],
    "application/pdf": [".pdf"],
  },
};

/** Null where the browser has none. */
export function filePickers(): FilePickers | null {
  const page = window as unknown as Partial<FilePickers>;
  return page.showOpenFilePicker && page.showSaveFilePicker ? (page as FilePickers) : null;
}

/** Whether the page may use the file, asking the person where the browser wants that. */
export async function mayUse(handle: FileSystemFileHandle, mode: Access["mode"]): Promise<boolean> {
  const { queryPermission, requestPermission } = handle as PermittedHandle;
  if (!queryPermission || !requestPermission) return true;
  if ((await queryPermission.call(handle, { mode })) === "granted") return true;
  return (await requestPermission.call(handle, { mode })) === "granted";
}

/** Asks with a file field; null when cancelled. */
export function chooseFile(accept: string): Promise<File | null> {
  const field = document.createElement("input");
  field.type = "file";
  field.accept = accept;
  return new Promise((resolve) => {
    field.addEventListener("change", () => resolve(field.files?.[0] ?? null));
    field.addEventListener("cancel", () => resolve(null));
    field.click();
  });
}

/** Puts a file into the browser's download folder. */
export function download(name: string, content: BlobPart, type: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.download = name;
  link.click();
  // The download has its own hold on the content once it has started.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
