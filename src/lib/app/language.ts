import { type Locale, words } from '$lib/text';
import { preferences } from './preferences.svelte.ts';

/** Changes the language of the app and keeps the choice; false when its words could not be fetched. */
export async function chooseLanguage(locale: Locale): Promise<boolean> {
  const isInUse = await words.use(locale);
  if (isInUse) preferences.set({ locale });
  return isInUse;
}

/** Speaks the language that was chosen on this device. Call once at the start. */
export async function startLanguage(): Promise<void> {
  await words.use(preferences.values.locale);
}
