/** Drops the stored copies of the app, never what was saved with it, and opens the app anew. */
const button = document.getElementById('repair');
const said = document.getElementById('said');
const home = new URL('.', location.href);

button?.addEventListener('click', () => {
  void repair().catch((error) => say(`That did not work (${error}). Try again.`));
});

async function repair() {
  say('Fetching the app…');
  // Without a network the stored copy is all there is: then it must stay.
  const isThere = await fetch(new URL('workers.json', home), { method: 'HEAD', cache: 'no-store' })
    .then(({ ok }) => ok)
    .catch(() => false);
  if (!isThere) return say('There is no network here. Nothing was changed: try again with one.');
  const registration = await navigator.serviceWorker?.getRegistration(home);
  await registration?.unregister();
  const own = `evencourse${home.pathname.replace(/\/$/, '')}-`;
  const names = 'caches' in window ? await caches.keys() : [];
  await Promise.all(
    names.filter((name) => name.startsWith(own)).map((name) => caches.delete(name))
  );
  // The browser may hold an old page of its own: have it ask for a fresh one.
  await fetch(home, { cache: 'reload' });
  location.replace(home);
}

/** @param {string} sentence */
function say(sentence) {
  if (said) said.textContent = sentence;
}
