// Files that the service made, handed to the person.

/** @param {Blob} content @param {string} name */
export function download(content, name) {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(content);
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
