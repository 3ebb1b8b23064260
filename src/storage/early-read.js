// @ts-check
/*
 * Stands in the page itself, and reads what the first screen needs while the app's own script is still on its way. Changes
 * nothing: where there is no database, or one of another version, or a host's policy forbids this script, the app goes its
 * ordinary way. What was read is taken by early.ts.
 */
{
  /** @type {() => void} */
  let goOn;
  const asked = new Promise((resolve) => (goOn = () => resolve(null)));
  const early = new Promise((resolve) => {
    const nothing = () => {
      goOn();
      resolve(null);
    };
    /** @param {IDBDatabase} db */
    const read = (db) => {
      const tx = db.transaction(['settings', 'meta', 'machines', 'jobs', 'evidence', 'runs']);
      /** @type {Map<string, unknown>} */
      const answers = new Map();
      let open = 0;
      /**
       * @param {string} name as in early.ts
       * @param {IDBRequest} request
       * @param {(result: any) => void} [then]
       */
      const ask = (name, request, then) => {
        open += 1;
        request.onsuccess = () => {
          answers.set(name, request.result);
          then?.(request.result);
          open -= 1;
          // With the last answer: the transaction's own end is told later.
          if (open === 0) resolve({ db, answers });
        };
      };
      ask('settings/person', tx.objectStore('settings').get('person'), (settings) => {
        const id = settings?.body?.machine;
        if (typeof id === 'string') {
          ask(`machines/${id}`, tx.objectStore('machines').get(id));
          ask(`jobs/${id}`, tx.objectStore('jobs').get(id));
          ask(`evidence?machine=${id}`, tx.objectStore('evidence').index('machine').getAll(id));
        }
        goOn();
      });
      ask('meta/value/place', tx.objectStore('meta').get('value/place'));
      ask('runs?open', tx.objectStore('runs').index('open').getAll());
      return tx;
    };
    try {
      // Without a number: whatever version there is.
      const opening = indexedDB.open('latheside');
      // There is none, and none is made here.
      opening.onupgradeneeded = () => opening.transaction?.abort();
      opening.onerror = nothing;
      opening.onsuccess = () => {
        const db = opening.result;
        const given = () => {
          db.close();
          nothing();
        };
        db.onversionchange = given;
        try {
          read(db).onabort = given;
        } catch {
          given();
        }
      };
    } catch {
      nothing();
    }
  });
  Object.assign(globalThis, { lathesideEarly: early, lathesideAsked: asked });
}
