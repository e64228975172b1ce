import { describe, expect, it } from 'vitest';
import { needsInstallHint } from './install-hint.ts';

describe('needsInstallHint', () => {
  it.each([
    ['Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X)', 5, false, true],
    ['Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X)', 5, true, false],
    ['Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7)', 5, false, true],
    ['Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7)', 0, false, false],
    ['Mozilla/5.0 (Linux; Android 14; Pixel 7)', 5, false, false]
  ])('%s, %i fingers, installed %s: %s', (userAgent, touchPoints, isInstalled, needs) => {
    expect(needsInstallHint(userAgent, touchPoints, isInstalled)).toBe(needs);
  });
});
