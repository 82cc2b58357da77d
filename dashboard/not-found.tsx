import { LinkButton } from './parts/button.tsx';
import { Page } from './parts/page.tsx';
import { hrefTo } from './router.ts';
import { shellWords } from './words/parts.ts';

export function NotFound({ path }: { readonly path: string }) {
  return (
    <Page title={shellWords.unknownTitle}>
      <p>{shellWords.unknown(path)}</p>
      <p>
        <LinkButton href={hrefTo({ view: 'wall' })}>{shellWords.toWall}</LinkButton>
      </p>
    </Page>
  );
}
