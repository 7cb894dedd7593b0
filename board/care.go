package board

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"tarpside/board/stores"
	"tarpside/model"
)

// LoadStores changes the inventory to what the tables of a folder say, by one
// entry. With dry it changes nothing. It returns what changes; problems of the
// tables come back as stores.Problems, and then nothing was changed.
func (b *Board) LoadStores(fsys fs.FS, by string, dry bool) ([]stores.Change, error) {
	d, problems := stores.Read(fsys)
	if err := problems.Err(); err != nil {
		return nil, err
	}
	return b.load(d, by, dry)
}

// LoadStoresFrom is LoadStores for a folder of tables or an XLSX workbook on
// the disk.
func (b *Board) LoadStoresFrom(path, by string, dry bool) ([]stores.Change, error) {
	if !IsWorkbook(path) {
		return b.LoadStores(os.DirFS(path), by, dry)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	d, problems := stores.ReadWorkbook(filepath.Base(path), data)
	if err := problems.Err(); err != nil {
		return nil, err
	}
	return b.load(d, by, dry)
}

// IsWorkbook tells by its name whether a path is an XLSX workbook.
func IsWorkbook(path string) bool { return strings.EqualFold(filepath.Ext(path), ".xlsx") }

func (b *Board) load(d *model.Department, by string, dry bool) ([]stores.Change, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	patch, changes := stores.Diff(b.Picture().State.Wanted(), d)
	if dry || len(changes) == 0 {
		return changes, nil
	}
	e := model.Entry{Act: model.Act{Verb: model.Stores, By: by, Quantity: model.Blank}, Scene: b.Picture().Scene, Stores: &patch}
	return changes, b.log([]model.Entry{e})
}

// SaveStores writes the tables of the inventory to a folder, or to an XLSX
// workbook, as the name of the path says. What is there is replaced whole.
func (b *Board) SaveStores(path string) error {
	d := b.Picture().State.Wanted()
	if !IsWorkbook(path) {
		return stores.Write(path, d)
	}
	if err := writeWhole(path, func(w io.Writer) error { return stores.WriteWorkbook(w, d) }); err != nil {
		return fmt.Errorf("%s could not be written. The department file is as it was; choose a folder that may be written to: %w", filepath.Base(path), err)
	}
	return nil
}

// writeWhole makes a file that is whole at any moment: written beside its
// place and made safe on the disk before it takes it. It makes the folder.
func writeWhole(path string, write func(io.Writer) error) (err error) {
	dir := filepath.Dir(path)
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	f, err := os.CreateTemp(dir, "."+filepath.Base(path)+"-*.tmp")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			f.Close()
			os.Remove(f.Name())
		}
	}()
	if err = write(f); err != nil {
		return err
	}
	if err = errors.Join(f.Chmod(0o644), f.Sync()); err != nil {
		return err
	}
	if err = f.Close(); err != nil {
		return err
	}
	if err = os.Rename(f.Name(), path); err != nil {
		return err
	}
	return syncFolder(dir)
}

// Backup writes a copy of the file, while it is in use if need be.
func (b *Board) Backup(path string) error { return b.ledger.Backup(path) }

// A Finding is one thing that Verify checked.
type Finding struct {
	OK    bool
	Words string
}

// Verify recomputes everything from the entries and says what it checked.
// Others may go on logging meanwhile.
func (b *Board) Verify() ([]Finding, error) {
	b.mu.Lock()
	shown, clock := b.Picture().State, b.clock
	last, err := b.ledger.Count()
	balance, kept, errKept := b.ledger.LatestBalance()
	b.mu.Unlock()
	if err != nil {
		return nil, err
	}
	report, err := b.ledger.Check()
	if err != nil {
		return nil, err
	}
	var out []Finding
	add := func(ok bool, format string, args ...any) {
		out = append(out, Finding{ok, fmt.Sprintf(format, args...)})
	}
	for _, p := range report.Problems {
		add(false, "%s", p)
	}
	add(len(report.Problems) == 0, "The file is whole, and all %d entries can be read", report.Entries)
	whole, _, err := foldFrom(b.ledger, nil, last, clock)
	if err != nil {
		return out, err
	}
	add(same(whole.state, shown), "Folded again from the first entry, the board is the same as on screen")
	items := whole.state.Dept.Items
	bad := whole.state.Unbalanced()
	for _, i := range bad {
		add(false, "%s: its places do not add up to %d", items[i].ID, items[i].Quantity)
	}
	add(len(bad) == 0, "Every one of the %d lines adds up to what its rig owns", len(items))
	if kept || errKept != nil {
		_, reads := opened(balance)
		f, follows, err := foldFrom(b.ledger, &balance, last, clock)
		if err != nil {
			return out, err
		}
		add(reads && (!follows || same(f.state, whole.state)), "The balance kept at the last close gives the same")
	}
	return out, nil
}

// ErrExists is the error for a target that is there already.
var ErrExists = errors.New("there is a file already")
