package model

import (
	"maps"
	"slices"
	"strings"
)

// A State is the board: the fold of the entries taken so far. It is changed
// only by Apply; Clone is cheap, so a published State is simply never applied
// to again.
type State struct {
	Dept *Department // the inventory in force

	lines     []*Line // as Dept.Items
	scenes    []*Scene
	want      *Department // the inventory as last edited; differs from Dept while pieces are out
	held      []string    // lines whose quantity or kit waits until they are home
	visitors  []string    // rigs that arrived and are in no table
	restocked map[string]int
	seen      Vector
	folded    int // entries applied
	epoch     int
	barrier   int // no move up to this entry can be undone
}

// A Scene is one incident, drill or rig check.
type Scene struct {
	ID        string     `json:"id"`
	Name      string     `json:"name,omitempty"`
	Ground    string     `json:"ground,omitempty"`
	Opened    int64      `json:"opened,omitempty"` // Unix ms
	Closed    bool       `json:"closed,omitempty"`
	Took      []string   `json:"took,omitempty"` // the scenes that it followed, the last ones first
	ClearUp   bool       `json:"clear_up,omitempty"`
	Staging   string     `json:"staging,omitempty"` // who stages, since the last relief
	Since     int64      `json:"since,omitempty"`
	Arrived   []string   `json:"arrived,omitempty"`
	Left      []string   `json:"left,omitempty"`
	Accepted  []string   `json:"accepted,omitempty"`  // rigs and agencies whose pieces an officer signed for
	Overrides []Overrule `json:"overrides,omitempty"` // for the rest of the scene
	Unknown   []string   `json:"unknown,omitempty"`   // pieces that are in no table, not settled yet
}

// An Overrule is an officer letting a check of an item pass.
type Overrule struct {
	Item  string `json:"item"`
	Check string `json:"check"`
	By    string `json:"by"`
}

// NewState is the board of a department before its first entry: every piece
// is home.
func NewState(d *Department) *State {
	s := &State{Dept: d, want: d, scenes: []*Scene{{Closed: true}}, restocked: map[string]int{}, seen: Vector{}}
	s.lines = make([]*Line, len(d.Items))
	for i := range d.Items {
		s.lines[i] = s.atHome(i)
	}
	return s
}

func (s *State) atHome(i int) *Line {
	l := &Line{}
	if n := s.Dept.Items[i].Quantity; n > 0 {
		l.Stacks = []Stack{{Place: s.HomeOf(i), N: n}}
	}
	return l
}

// Clone makes a board that can be applied to without changing this one.
func (s *State) Clone() *State {
	c := *s
	c.lines = slices.Clone(s.lines)
	c.scenes = slices.Clone(s.scenes)
	c.seen = maps.Clone(s.seen)
	return &c
}

// Seen is how many entries of each device the board holds.
func (s *State) Seen() Vector { return s.seen.Clone() }

// Folded is how many entries the board holds.
func (s *State) Folded() int { return s.folded }

// Line is the line at a position of Dept.Items. It must not be changed.
func (s *State) Line(i int) *Line { return s.lines[i] }

// LineOf is the line of an item, nil if the item is not in the inventory.
func (s *State) LineOf(item string) *Line {
	if i := s.Dept.ItemIndex(item); i >= 0 {
		return s.lines[i]
	}
	return nil
}

// HomeOf is the home place of a line: its kit, or its own slot.
func (s *State) HomeOf(i int) Place {
	if k := s.Dept.Items[i].Kit; k != "" {
		return Place{Kind: InKit, Name: k}
	}
	return Place{Kind: Home}
}

// Real is the place of the outermost kit, for a place inside one; else the
// place itself.
func (s *State) Real(p Place) Place {
	r, _ := s.outermost(p)
	return r
}

// RealHolder is who holds what lies at the place of a line: for a place in a
// kit, who holds the outermost kit.
func (s *State) RealHolder(i int, p Place) string {
	if p.Kind != InKit {
		return s.lines[i].Holder(p)
	}
	_, h := s.outermost(p)
	return h
}

func (s *State) outermost(p Place) (Place, string) {
	holder := ""
	for range len(s.lines) { // a kit is never in itself; the bound guards a bad table
		if p.Kind != InKit {
			break
		}
		k := s.Dept.ItemIndex(p.Name)
		if k < 0 || len(s.lines[k].Stacks) == 0 {
			break
		}
		p, holder = s.lines[k].Stacks[0].Place, s.lines[k].Stacks[0].Holder
	}
	return p, holder
}

// Inside walks the lines that have pieces in the kit, to any depth.
func (s *State) Inside(kit int, visit func(line int)) {
	in := Place{Kind: InKit, Name: s.Dept.Items[kit].ID}
	for _, i := range s.Dept.Inside(kit) {
		if s.lines[i].N(in) > 0 {
			visit(i)
			if s.Dept.Items[i].Kind == Kit {
				s.Inside(i, visit)
			}
		}
	}
}

// Weight is one piece with what is in it now, in pounds.
func (s *State) Weight(i int) float64 {
	w := s.Dept.Items[i].WeightLb
	if s.Dept.Items[i].Kind == Kit {
		in := Place{Kind: InKit, Name: s.Dept.Items[i].ID}
		for _, c := range s.Dept.Inside(i) {
			if n := s.lines[c].N(in); n > 0 {
				w += float64(n) * s.Weight(c)
			}
		}
	}
	return w
}

// TwoPersonLb is the weight over which one pair of hands is not enough: the
// load constant of the revised NIOSH lifting equation (DHHS/NIOSH 94-110).
const TwoPersonLb = 51

// TwoPerson tells whether a piece is lifted by two: by its own flag, or by
// the weight of one piece with what is in it now.
func (s *State) TwoPerson(i int) bool {
	return s.Dept.Items[i].TwoPerson || s.Weight(i) > TwoPersonLb
}

// Aboard tells whether a piece of the line is really home.
func (s *State) Aboard(i int) bool {
	h := s.HomeOf(i)
	return s.lines[i].N(h) > 0 && s.Real(h).Kind == Home
}

// Out counts the pieces that are not in their home place, used or lost.
func (s *State) Out(i int) int { return s.lines[i].out(s.HomeOf(i)) }

// away counts the pieces that are not really home.
func (s *State) away(i int) int {
	h := s.HomeOf(i)
	if s.Real(h).Kind != Home {
		return s.Dept.Items[i].Quantity
	}
	return s.Dept.Items[i].Quantity - s.lines[i].N(h)
}

// Scene finds a scene by its id. A scene that has been followed by another
// answers as the one that followed it.
func (s *State) Scene(id string) *Scene { return s.scenes[s.sceneAt(id)] }

// Scenes lists the scenes that are open, and those closed since the last one
// opened.
func (s *State) Scenes() []*Scene { return s.scenes }

func (s *State) sceneAt(id string) int {
	last := len(s.scenes) - 1
	for i, sc := range s.scenes {
		if sc.ID == id {
			return i
		}
		if slices.Contains(sc.Took, id) {
			last = i
		}
	}
	return last
}

// KnownRig tells whether a rig is in the table or arrived as a new one.
func (s *State) KnownRig(rig string) bool {
	return s.Dept.Rig(rig) != nil || slices.Contains(s.visitors, rig)
}

// Visitors lists the rigs that arrived and are in no table.
func (s *State) Visitors() []string { return s.visitors }

// IsPast tells whether the line was past the tarp in the scene.
func (s *State) IsPast(i int, scene string) bool {
	return s.lines[i].scene(s.Scene(scene).ID).Past
}

// Extra is how many pieces a count of the scene saw beyond the books.
func (s *State) Extra(i int, scene string) int {
	return s.lines[i].scene(s.Scene(scene).ID).Extra
}

// AnyExtra is how many pieces counts saw beyond the books, in any scene.
func (s *State) AnyExtra(i int) int {
	n := 0
	for _, sc := range s.lines[i].Scenes {
		n += sc.Extra
	}
	return n
}

// FoundAtCount is how many used pieces were found only by counting.
func (s *State) FoundAtCount(i int) int {
	n := 0
	for _, sc := range s.lines[i].Scenes {
		n += sc.Found
	}
	return n
}

// FoundIn is how many used pieces counts of the scene found.
func (s *State) FoundIn(i int, scene string) int {
	return s.lines[i].scene(s.Scene(scene).ID).Found
}

// Overridden tells whether an officer let the check of the item pass, for the
// rest of the scene.
func (s *State) Overridden(scene, item, check string) bool {
	for _, o := range s.Scene(scene).Overrides {
		if o.Item == item && strings.EqualFold(o.Check, check) {
			return true
		}
	}
	return false
}

// PastInside tells whether the line, or any that lives in it to any depth,
// was past the tarp in the scene.
func (s *State) PastInside(i int, scene string) bool {
	if s.IsPast(i, scene) {
		return true
	}
	for _, c := range s.Dept.Inside(i) {
		if s.PastInside(c, scene) {
			return true
		}
	}
	return false
}

// Restocked is how many pieces were taken from a line of the station's store.
func (s *State) Restocked(stock string) int { return s.restocked[stock] }

// Resolve reads a typed place for a line: "home" is the line's home place,
// and the tarp and the places of the scene get its ground.
func (s *State) Resolve(text string, line int, scene string) (Place, error) {
	p, err := ParsePlace(text)
	if err != nil {
		return p, err
	}
	if p.Kind == Home && line >= 0 {
		p = s.HomeOf(line)
	}
	if p.onScene() && p.Ground == "" {
		p.Ground = s.Scene(scene).Ground
	}
	return p, nil
}

// edit gives the line a value of its own for this entry.
func (s *State) edit(i int) *Line {
	l := s.lines[i]
	if l.epoch == s.epoch {
		return l
	}
	c := &roomy{Line: *l}
	c.Stacks = append(c.room[:0], l.Stacks...)
	c.epoch = s.epoch
	s.lines[i] = &c.Line
	return &c.Line
}

// roomy is a line with its stacks beside it, as long as they are few: an entry
// makes one value, not two.
type roomy struct {
	Line
	room [2]Stack
}

// editScene gives the scene a value of its own.
func (s *State) editScene(id string) *Scene {
	i := s.sceneAt(id)
	c := *s.scenes[i]
	s.scenes[i] = &c
	return &c
}
