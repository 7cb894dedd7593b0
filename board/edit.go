package board

import (
	"tarpside/board/stores"
	"tarpside/model"
)

// EditStores changes some rows of the inventory, by one stores entry. The
// tables as they would be then are checked as on a load; problems come back
// as stores.Problems, and then nothing was changed. A change of quantity of
// pieces that are out waits until they are home: State.Held names them.
func (b *Board) EditStores(patch model.InventoryPatch, by string) (model.Entry, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	p := b.Picture()
	if err := stores.Check(p.State.Wanted().Patched(&patch)).Err(); err != nil {
		return model.Entry{}, err
	}
	entries := []model.Entry{{Act: model.Act{Verb: model.Stores, By: by, Quantity: model.Blank}, Scene: p.Scene, Stores: &patch}}
	err := b.log(entries)
	return entries[0], err
}
