import { useEffect, useState } from 'preact/hooks';
import type { ShopSettings } from '../../hub/contract/shop.ts';
import { type WallPlace, type WallSizes, wallSizes } from './sizes.ts';

/** A wall is wide and landscape; anything else is for looking, stacks and scrolls. The same words as wall.css. */
const WIDE = '(min-width: 900px) and (min-aspect-ratio: 6/5)';

const PROPERTIES = {
  '--u': 'unit',
  '--type-move': 'move',
  '--type-heat': 'heat',
  '--type-alarm': 'alarm',
  '--type-value': 'value',
  '--touch': 'touch',
} as const satisfies Record<string, keyof WallSizes>;

type LanesShown = Pick<WallPlace, 'runningLanes' | 'bannerShown'>;

/**
 * Works out the wall's letters and targets from the screen that was set up, and hands them to the style sheet.
 * Null on a screen that is no wall.
 */
export function useWallSizes(settings: ShopSettings, lanes: LanesShown): WallSizes | null {
  const [frame, setFrame] = useState(frameOf());
  useEffect(() => {
    const read = () => setFrame(frameOf());
    window.addEventListener('resize', read);
    return () => window.removeEventListener('resize', read);
  }, []);
  const sizes = frame.wide
    ? wallSizes({
        diagonalInches: settings.screenDiagonalInches,
        distanceMetres: settings.viewingDistanceMetres,
        widthPx: frame.widthPx,
        heightPx: frame.heightPx,
        ...lanes,
      })
    : null;
  const key = JSON.stringify(sizes);
  useEffect(() => {
    const { style } = document.documentElement;
    for (const [property, name] of Object.entries(PROPERTIES)) {
      if (sizes === null) style.removeProperty(property);
      else style.setProperty(property, `${sizes[name].toFixed(2)}px`);
    }
    return () => {
      for (const property of Object.keys(PROPERTIES)) style.removeProperty(property);
    };
  }, [key]);
  return sizes;
}

function frameOf(): { wide: boolean; widthPx: number; heightPx: number } {
  const { innerWidth: widthPx, innerHeight: heightPx } = window;
  return { wide: window.matchMedia(WIDE).matches, widthPx, heightPx };
}
