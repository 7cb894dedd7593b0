package main

import (
	"fmt"
	"slices"
	"strings"

	"tarpside/board"
	"tarpside/model"
)

// list opens the file, and prints a table: as it is for scripts, or for people.
func (c *call) list(table func(*board.Picture) (board.Table, error), people func(*board.Picture, board.Table) []string) error {
	b, err := c.look()
	if err != nil {
		return err
	}
	defer b.Close()
	p := b.Picture()
	t, err := table(p)
	if err != nil {
		return err
	}
	if c.csv {
		return t.WriteCSV(c.out)
	}
	c.lines(people(p, t)...)
	return nil
}

func plain(table func(*board.Picture) board.Table) func(*board.Picture) (board.Table, error) {
	return func(p *board.Picture) (board.Table, error) { return table(p), nil }
}

func (c *call) where() error     { return c.list(plain((*board.Picture).Where), whereLines) }
func (c *call) glance() error    { return c.list(plain((*board.Picture).Glance), glanceLines) }
func (c *call) ready() error     { return c.list(plain((*board.Picture).Ready), readyLines) }
func (c *call) restock() error   { return c.list(plain((*board.Picture).Restock), restockLines) }
func (c *call) bringback() error { return c.list(plain((*board.Picture).BringBack), bringBackLines) }
func (c *call) proof() error     { return c.list(plain((*board.Picture).Proof), proofLines) }

func (c *call) loadup() error  { return c.ofRig((*board.Picture).LoadUp, loadUpLines) }
func (c *call) leaving() error { return c.ofRig((*board.Picture).Leaving, leavingLines) }

// ofRig prints a table about a rig: a word behind the command, or -rig.
func (c *call) ofRig(table func(*board.Picture, string) board.Table, people func(*board.Picture, board.Table, string) []string) error {
	asked := c.rig
	if len(c.args) > 0 {
		asked = c.args[0]
	}
	switch {
	case asked == "":
		return misuse("which rig? Its id stands behind the command, such as R41")
	case c.rig != "" && !strings.EqualFold(asked, c.rig):
		return misuse(fmt.Sprintf("%s or %s? One rig at a time", asked, c.rig))
	}
	rig := ""
	return c.list(func(p *board.Picture) (t board.Table, err error) {
		if rig, err = knownRig(p, asked); err == nil {
			t = table(p, rig)
		}
		return t, err
	}, func(p *board.Picture, t board.Table) []string { return people(p, t, rig) })
}

// knownRig finds a rig by its id, in capitals or not.
func knownRig(p *board.Picture, id string) (string, error) {
	var ids, names []string
	for _, r := range p.State.Dept.Rigs {
		ids, names = append(ids, r.ID), append(names, fmt.Sprintf("%s (%s)", r.ID, r.Name))
	}
	for _, v := range p.State.Visitors() {
		ids, names = append(ids, v), append(names, v+" (arrived, in no table)")
	}
	for _, same := range []func(a, b string) bool{func(a, b string) bool { return a == b }, strings.EqualFold} {
		for _, r := range ids {
			if same(r, id) {
				return r, nil
			}
		}
	}
	if len(names) == 0 {
		return "", fmt.Errorf("there is no rig %q: there are none in this file yet. First: tarpline stores load DIR", id)
	}
	return "", fmt.Errorf("there is no rig %q; there are %s", id, strings.Join(names, ", "))
}

// pick makes a list for people of some columns of a table. A column is
// "title=column"; a title with > before it stands right.
func pick(t board.Table, columns string, cell func(column, text string) string) []string {
	var fields []field
	var from []int
	for _, f := range strings.Split(columns, ",") {
		title, column, _ := strings.Cut(f, "=")
		fields = append(fields, field{strings.TrimPrefix(title, ">"), strings.HasPrefix(title, ">")})
		from = append(from, slices.Index(t.Columns, column))
	}
	rows := make([][]string, len(t.Rows))
	for i, row := range t.Rows {
		for _, at := range from {
			rows[i] = append(rows[i], cell(t.Columns[at], row[at]))
		}
	}
	return grid(fields, rows)
}

// spoken turns the cells of a table into what people say.
func spoken(d *model.Department) func(column, text string) string {
	return func(column, text string) string {
		switch column {
		case "place", "where":
			return sayPlace(d, text)
		case "holder":
			return people(d, text)
		}
		return text
	}
}

// sayPlace is a place of a table in words: short, and with the name of an
// agency or a rig.
func sayPlace(d *model.Department, text string) string {
	kind, name, _ := strings.Cut(text, ":")
	switch model.PlaceKind(kind) {
	case model.At:
		return "at " + name
	case model.With:
		return "with " + party(d, name)
	case model.Riding:
		return "on " + party(d, name)
	}
	if rest, ok := strings.CutPrefix(text, string(model.Tarp)); ok {
		return "on the tarp" + rest
	}
	return text
}

// party names a rig or an agency.
func party(d *model.Department, id string) string {
	if r := d.Rig(id); r != nil {
		return r.Name
	}
	if a := d.Agency(id); a != nil {
		return a.Name
	}
	return id
}

// people names members; several are joined with "+".
func people(d *model.Department, ids string) string {
	names := strings.Split(ids, "+")
	for i, id := range names {
		if m := d.Member(id); m != nil {
			names[i] = m.Name
		}
	}
	return strings.Join(names, ", ")
}
