/**
 * @template T
 * @callback Work
 * @param {Record<string, IDBObjectStore>} stores
 * @param {(result: T) => void} done
 * @param {(error: unknown) => void} fail
 * @returns {void}
 */

/**
 * A database of this browser: one connection, and one transaction a change, on disk before it counts. A later version
 * only adds stores, so that nothing kept is touched, and a page of an earlier copy of the site works on with what it
 * knows.
 */
export class Database {
  /**
   * @param {string} name
   * @param {(db: IDBDatabase, before: number) => void} make the stores that came after a version; 0 for all of them
   * @param {() => void} [lost] told when the browser closed it
   * @param {number} [version]
   */
  constructor(name, make, lost = () => {}, version = 1) {
    this.name = name;
    this.version = version;
    this.make = make;
    this.lost = lost;
    /** @type {Promise<IDBDatabase> | null} */
    this.connection = null;
  }

  /** @returns {Promise<IDBDatabase>} */
  connect() {
    this.connection ??= this.opened(this.version);
    return this.connection;
  }

  /**
   * @param {number} [version] none for whichever is there
   * @returns {Promise<IDBDatabase>}
   */
  opened(version) {
    return new Promise((resolve, reject) => {
      const request = indexedDB.open(this.name, version);
      request.onupgradeneeded = ({ oldVersion }) => this.make(request.result, oldVersion);
      // Another page may have to finish what it is writing before the version is raised.
      request.onblocked = () => setTimeout(reject, 5000, new Error("blocked"));
      request.onerror = () => {
        // A later copy of the site has raised it.
        if (request.error?.name === "VersionError") resolve(this.opened());
        else reject(request.error);
      };
      request.onsuccess = () => {
        const db = request.result;
        db.onversionchange = () => db.close();
        db.onclose = () => {
          this.connection = null;
          this.lost();
        };
        resolve(db);
      };
    });
  }

  /**
   * One transaction. `work` is handed the stores and must only use them; its result is given once all is on disk.
   * @template T
   * @param {string[]} names
   * @param {IDBTransactionMode} mode
   * @param {Work<T>} work
   * @returns {Promise<T>}
   */
  async transaction(names, mode, work) {
    try {
      return await attempt(await this.connect(), names, mode, work);
    } catch (error) {
      if (!(error instanceof DOMException && error.name === "InvalidStateError")) throw error;
      this.connection = null; // the browser closed the connection; once more on a new one
      return attempt(await this.connect(), names, mode, work);
    }
  }
}

/**
 * @template T
 * @param {IDBDatabase} db
 * @param {string[]} names
 * @param {IDBTransactionMode} mode
 * @param {Work<T>} work
 * @returns {Promise<T>}
 */
function attempt(db, names, mode, work) {
  return new Promise((resolve, reject) => {
    const change = db.transaction(names, mode, mode === "readwrite" ? { durability: "strict" } : {});
    /** @type {T} what `work` was done with; a change of nothing but rows is done with nothing */
    let result;
    /** @type {unknown} */
    let fault = null;
    change.oncomplete = () => resolve(result);
    change.onabort = () => reject(fault ?? change.error ?? new Error("aborted"));
    const stores = Object.fromEntries(names.map((name) => [name, change.objectStore(name)]));
    const done = (/** @type {T} */ value) => {
      result = value;
    };
    const fail = (/** @type {unknown} */ error) => {
      fault = error;
      change.abort();
    };
    work(stores, done, fail);
  });
}
