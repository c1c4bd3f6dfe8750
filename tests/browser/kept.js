// What the page keeps on the device, read and changed behind its back as another program would.
(() => {
  const asked = (request) => new Promise((give, refuse) => {
    request.onsuccess = () => give(request.result);
    request.onerror = () => refuse(request.error);
  });
  /** Works in the store of texts and waits until that is over. */
  const work = async (mode, act, store = "texts") => {
    const request = indexedDB.open("layshaft");
    request.onupgradeneeded = () => request.transaction.abort();
    const database = await asked(request);
    const answer = await asked(act(database.transaction(store, mode).objectStore(store)));
    database.close();
    return answer;
  };
  return {
    /** The text under a key; empty where there is none. */
    get: async (key) => (await work("readonly", (texts) => texts.get(key))) ?? "",
    /** Every key that begins so. */
    keys: async (prefix) => (await work("readonly", (texts) => texts.getAllKeys())).filter((key) => key.startsWith(prefix)),
    /** Every text, those of the older store too. */
    texts: async () => [...(await work("readonly", (texts) => texts.getAll())), ...Object.values(localStorage)],
    put: (key, text) => work("readwrite", (texts) => texts.put(text, key)),
    remove: (key) => work("readwrite", (texts) => texts.delete(key)),
    /** How many photographs there are. */
    photographs: () => work("readonly", (photographs) => photographs.count(), "photographs"),
    /** Leaves the device as if nobody had ever been here. */
    forget: async () => {
      localStorage.clear();
      sessionStorage.clear();
      for (const store of ["texts", "photographs"]) await work("readwrite", (texts) => texts.clear(), store);
    },
    /** The key of the job that lies open. */
    open: () => "layshaft.job." + localStorage.getItem("layshaft.open"),
    /** The text of the job that lies open. */
    job: () => window.kept.get(window.kept.open()),
  };
})()
