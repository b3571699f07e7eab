/**
 * Stands in for `office-addin-manifest`, of which office-addin-mock needs only the host names; the real one drags in
 * modules that jest cannot load, and without the names the mock's load and sync checks are silently off.
 */
export enum OfficeApp {
  Excel = 'excel',
  OneNote = 'onenote',
  Outlook = 'outlook',
  PowerPoint = 'powerpoint',
  Project = 'project',
  Word = 'word',
}
