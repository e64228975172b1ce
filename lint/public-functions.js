import { readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';

/** @param {string} folder @returns {string[]} */
function modulesIn(folder) {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return modulesIn(path);
    return /\.ts$/.test(name) && !/\.test\.ts$/.test(name) ? [path] : [];
  });
}

/**
 * Exported functions whose comment keeps something back: those without a comment, and those that
 * throw, or call a check named `require…`, and do not say so with `@throws`.
 *
 * @param {string} folder
 * @returns {string[]} "file: function: what is missing"
 */
export function unsaidIn(folder) {
  return modulesIn(folder).flatMap((file) => {
    const source = ts.createSourceFile(file, readFileSync(file, 'utf8'), 99, true);
    return source.statements.flatMap((one) => {
      if (!ts.isFunctionDeclaration(one) || !one.body) return [];
      if (!one.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)) return [];
      const name = `${file}: ${one.name?.text}`;
      const comments = ts.getJSDocCommentsAndTags(one).filter(ts.isJSDoc);
      if (comments.length === 0) return [`${name}: no comment`];
      const throws = /\bthrow\b|\brequire[A-Z]\w*\(/.test(one.body.getText());
      const isSaid = comments.some((comment) => comment.getText().includes('@throws'));
      return throws && !isSaid ? [`${name}: no @throws`] : [];
    });
  });
}
