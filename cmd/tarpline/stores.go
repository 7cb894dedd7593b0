package main

import (
	"errors"
	"fmt"
	"os"
	"strings"

	"tarpside/board"
	"tarpside/board/stores"
)

func (c *call) stores() error {
	switch path := c.args[1]; c.args[0] {
	case "load":
		return c.load(path)
	case "save":
		if c.given["dry"] || c.given["by"] || c.given["csv"] {
			return misuse("stores save takes no options but -db; try: tarpline help stores")
		}
		return c.save(path)
	}
	return misuse("it is: tarpline stores load DIR, or tarpline stores save DIR; for DIR there may be a workbook, FILE.xlsx")
}

func (c *call) load(path string) error {
	if st, err := os.Stat(path); err != nil || st.IsDir() == board.IsWorkbook(path) {
		return fmt.Errorf("there is no folder %s, or no workbook where it ends in .xlsx. Nothing was changed; name the folder that has rigs.csv, slots.csv, items.csv and checks.csv in it, or a workbook with the same sheets", path)
	}
	b, done, err := c.toLoad()
	if err != nil {
		return err
	}
	defer done()
	changes, err := b.LoadStoresFrom(path, c.by, c.dry)
	var problems stores.Problems
	if errors.As(err, &problems) {
		return fmt.Errorf("nothing was changed: %s", badRows(problems))
	}
	if err != nil {
		return err
	}
	if c.csv {
		return changeTable(changes).WriteCSV(c.out)
	}
	switch {
	case len(changes) == 0:
		c.lines("The inventory is as these tables say already. Nothing was changed.")
	case c.dry:
		c.lines("This would change; nothing has:", "")
	default:
		c.lines("Loaded:", "")
	}
	c.lines(changeLines(changes)...)
	if c.dry {
		return nil
	}
	s := b.Picture().State
	if held := s.Held(); len(held) > 0 {
		c.lines(hang("", fmt.Sprintf("Some pieces are out now, so what changes for %s counts once they are home.", strings.Join(held, ", ")))...)
	}
	for _, w := range stores.Warnings(s.Wanted()) {
		fmt.Fprintf(c.Stderr, "tarpline: taken, but mend it: %s\n", w)
	}
	return nil
}

// toLoad opens the file to load into. A trial on a file that is not there
// yet is made in the memory of this run: the folder stays empty.
func (c *call) toLoad() (b *board.Board, done func(), err error) {
	path, err := c.file()
	if err != nil {
		return nil, nil, err
	}
	if !c.dry {
		b, err := c.write()
		if err != nil {
			return nil, nil, err
		}
		return b, func() { b.Close() }, nil
	}
	if _, err := os.Stat(path); err == nil {
		b, err := c.look()
		if err != nil {
			return nil, nil, err
		}
		return b, func() { b.Close() }, nil
	}
	return c.practice()
}

// badRows names every problem, one a line.
func badRows(problems stores.Problems) string {
	head := fmt.Sprintf("%d things are wrong", len(problems))
	if len(problems) == 1 {
		head = "one thing is wrong"
	}
	return head + "\n" + problems.Error()
}

func (c *call) save(path string) error {
	b, err := c.look()
	if err != nil {
		return err
	}
	defer b.Close()
	if err := b.SaveStores(path); err != nil {
		return err
	}
	c.lines("The tables of the inventory are in " + path + ".")
	return nil
}

func changeTable(changes []stores.Change) board.Table {
	t := board.Table{Name: "changes", Columns: []string{"table", "key", "what", "column", "old", "new"}}
	for _, ch := range changes {
		if len(ch.Columns) == 0 {
			t.Rows = append(t.Rows, []string{ch.Table, ch.Key, ch.What, "", "", ""})
		}
		for _, turn := range ch.Columns {
			t.Rows = append(t.Rows, []string{ch.Table, ch.Key, ch.What, turn.Column, turn.Old, turn.New})
		}
	}
	return t
}

// changeLines say what changes, table by table: how many rows are new or gone
// and which, and each row that changes, as long as they are few. The CSV has
// all of it.
func changeLines(changes []stores.Change) (out []string) {
	for len(changes) > 0 {
		n := 1
		for n < len(changes) && changes[n].Table == changes[0].Table {
			n++
		}
		keys, altered := map[string][]string{}, []string(nil)
		for _, ch := range changes[:n] {
			keys[ch.What] = append(keys[ch.What], ch.Key)
			if ch.What == stores.Alter {
				altered = append(altered, strings.TrimPrefix(ch.String(), ch.Table+": "))
			}
		}
		head := fmt.Sprintf("%-10s  ", changes[0].Table)
		for _, w := range []struct{ what, words string }{{stores.Add, "new"}, {stores.Remove, "gone"}} {
			if list := keys[w.what]; len(list) > 0 {
				out = append(out, hang(head, fmt.Sprintf("%d %s%s", len(list), w.words, named(list)))...)
			}
		}
		if len(altered) > 0 {
			out = append(out, hang(head, fmt.Sprintf("%d changed", len(altered)))...)
			for _, a := range altered[:min(len(altered), most)] {
				out = append(out, hang("              ", a)...)
			}
		}
		if len(altered) > most {
			out = append(out, fmt.Sprintf("              and %d more; with -csv all are listed", len(altered)-most))
		}
		if len(keys[stores.Reorder]) > 0 {
			out = append(out, head+"the rows stand in another order")
		}
		changes = changes[n:]
	}
	return out
}

// most is how many rows of a table are named.
const most = 12

// named lists keys if they are few.
func named(keys []string) string {
	if len(keys) > most {
		return ""
	}
	return ": " + strings.Join(keys, ", ")
}
