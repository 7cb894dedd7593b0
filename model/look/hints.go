// Package look says where a piece that is short may be: today, which rig
// counted more of the same family than it owns.
package look

import (
	"cmp"
	"slices"

	"tarpside/model"
)

// A Hint is a line that is short here beside the lines of its family that
// other rigs counted beyond their books. It never settles anything: eyes do.
type Hint struct {
	Line  int // position in Dept.Items of the line that is short
	Short int // pieces unexplained
	Extra []Extra
}

// Extra is how many pieces a rig counted beyond the books of one line.
type Extra struct {
	Line, N int
}

// Clear tells whether there is one rig's line that explains the whole
// shortage by itself. Otherwise all are shown and none is proposed.
func (h Hint) Clear() bool { return len(h.Extra) == 1 && h.Extra[0].N == h.Short }

// Hints are the lines that are short while another rig has extra of the same
// family, in the order of the items. A family without a name matches nothing.
func Hints(s *model.State) []Hint {
	d := s.Dept
	extra := map[string][]int{}
	for _, i := range d.ByItem() {
		if s.AnyExtra(i) > 0 && d.Items[i].Family != "" {
			extra[d.Items[i].Family] = append(extra[d.Items[i].Family], i)
		}
	}
	var out []Hint
	for _, i := range d.ByItem() {
		short := s.Line(i).N(model.Place{Kind: model.Unexplained})
		if short == 0 {
			continue
		}
		h := Hint{Line: i, Short: short}
		for _, x := range extra[d.Items[i].Family] {
			if d.Items[x].Rig != d.Items[i].Rig {
				h.Extra = append(h.Extra, Extra{x, s.AnyExtra(x)})
			}
		}
		if len(h.Extra) == 0 {
			continue
		}
		// the extra that fits best first; equal ones keep the order of items
		slices.SortStableFunc(h.Extra, func(a, b Extra) int {
			return cmp.Compare(distance(a.N, short), distance(b.N, short))
		})
		out = append(out, h)
	}
	return out
}

func distance(a, b int) int { return max(a-b, b-a) }
