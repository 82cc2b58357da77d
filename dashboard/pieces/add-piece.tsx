import { useState } from 'preact/hooks';
import { Button } from '../parts/button.tsx';
import { navigate } from '../router.ts';
import { piecesWords } from '../words/pieces.ts';
import { PieceDialog } from './piece-dialog.tsx';

/** The press that adds a piece, and leads to it. */
export function AddPiece() {
  const [adding, setAdding] = useState(false);
  return (
    <>
      <Button tone="main" onPress={() => setAdding(true)}>
        {piecesWords.add}
      </Button>
      {adding && (
        <PieceDialog
          piece={null}
          onClose={() => setAdding(false)}
          onDone={({ id }) => navigate({ view: 'piece', id })}
        />
      )}
    </>
  );
}
