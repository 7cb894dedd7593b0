package model

import (
	"slices"
	"strings"
)

// Blank stands where a table leaves a whole number empty.
const Blank = -1 << 62

// A Rig owns pieces and is a place to carry pieces of other rigs. The mark is
// what is painted on its tools: words, shape and colour, any of them enough.
type Rig struct {
	ID, Name, Agency, Role          string
	Seats                           int
	MarkWords, MarkShape, MarkColor string
	Extra                           map[string]string `json:",omitempty"`
}

// A Slot is a place on a rig where pieces live. Depth 0 is in front; Lap is
// the number of its door on the walk round the rig.
type Slot struct {
	ID, Rig, Compartment, Side, Description string
	HandHeightIn                            float64 // inches above the ground
	Depth, Lap                              int
	Extra                                   map[string]string `json:",omitempty"`
}

// Kind says how a line is counted and whether it comes back.
type Kind string

// The four kinds of line.
const (
	Piece      Kind = "piece"      // one marked piece
	Counted    Kind = "counted"    // like pieces by number; they come back
	Consumable Kind = "consumable" // used up
	Kit        Kind = "kit"        // holds other lines
)

// An Ask is one check of an item with the item's own limit, if it has one:
// "battery>=80".
type Ask struct {
	Check    string
	Limit    float64
	HasLimit bool
}

// An Item is one line of the inventory: a marked piece, or a counted lot of
// like pieces. WeightLb is pounds for one piece without contents.
type Item struct {
	ID, Name, ShortName string
	OtherNames          []string `json:",omitempty"`
	Rig, Slot           string
	Kind                Kind
	Quantity            int
	Unit                string
	WeightLb            float64
	NoWeight            bool   `json:",omitempty"` // the weight is not known
	Kit                 string `json:",omitempty"` // the kit it lives in
	Checks              []Ask  `json:",omitempty"`
	Family              string
	Critical, TwoPerson bool
	Small, Dark         bool
	LeastUsable         int // Blank: all of them
	Order               int
	Stock, Mark         string
	Extra               map[string]string `json:",omitempty"`
}

// Least is the fewest pieces with which the line is still usable.
func (it *Item) Least() int {
	if it.LeastUsable == Blank {
		return it.Quantity
	}
	return it.LeastUsable
}

// Short is the name for tiles and the radio.
func (it *Item) Short() string {
	if it.ShortName != "" {
		return it.ShortName
	}
	return it.Name
}

// Ask finds the item's own line for a check, in any case.
func (it *Item) Ask(check string) (Ask, bool) {
	for _, a := range it.Checks {
		if strings.EqualFold(a.Check, check) {
			return a, true
		}
	}
	return Ask{}, false
}

// A StowRule says that First goes in before Then. Closes "alone": Then aboard
// closes First's space by itself. "both_ends": a through bay, closed only
// while pieces of the group are aboard behind both of its doors.
type StowRule struct {
	First, Then, Closes, Group, Why string
	Extra                           map[string]string `json:",omitempty"`
}

// The two ways in which a stow rule closes a space.
const (
	Alone    = "alone"
	BothEnds = "both_ends"
)

// A Check is a question asked before a piece goes back. Override is
// "officer", "never", or "officer, never when WORD".
type Check struct {
	ID, Question, Answer, Passes, IfItFails, Override string
	Number                                            bool              `json:",omitempty"` // the answer is a number
	Min, Max                                          float64           // its range
	Words                                             []string          `json:",omitempty"` // else one of these words
	Never                                             bool              `json:",omitempty"` // nobody may wave it through
	NeverWord                                         string            `json:",omitempty"` // an answer that nobody may wave through
	Extra                                             map[string]string `json:",omitempty"`
}

// A Member is somebody who may log, hold or sign.
type Member struct {
	ID, Name, Role string
	Officer        bool
	Agency, Rig    string
	Extra          map[string]string `json:",omitempty"`
}

// An Agency is a department or company that has rigs or takes pieces along.
type Agency struct {
	Code, Name, Kind, Phone string
	Extra                   map[string]string `json:",omitempty"`
}

// A PlaceName gives a place of the scene its meaning in words.
type PlaceName struct {
	Place, Meaning string
	Extra          map[string]string `json:",omitempty"`
}

// A Stock is a line of the station's store that refills items. The use a
// week is a mean and a standard deviation; LeadWeeks is the wait for an order.
type Stock struct {
	ID, Name                        string
	OnHand                          int
	WeeklyMean, WeeklySD, LeadWeeks float64
	Pack                            int
	Extra                           map[string]string `json:",omitempty"`
}

// A Pull is one line of a pull list: what a kind of call usually needs.
type Pull struct {
	List, Item, Name, Quantity, Need, Season, Note string
	Extra                                          map[string]string `json:",omitempty"`
}

// A Department is the whole inventory, in the order of its tables. It is
// never changed once indexed; a change makes a new one.
type Department struct {
	Rigs     []Rig       `json:",omitempty"`
	Slots    []Slot      `json:",omitempty"`
	Items    []Item      `json:",omitempty"`
	Rules    []StowRule  `json:",omitempty"`
	Checks   []Check     `json:",omitempty"`
	Members  []Member    `json:",omitempty"`
	Agencies []Agency    `json:",omitempty"`
	Places   []PlaceName `json:",omitempty"`
	Stock    []Stock     `json:",omitempty"`
	Pulls    []Pull      `json:",omitempty"`

	item   map[string]int
	rig    map[string]int
	slot   map[string]int
	check  map[string]int
	member map[string]int
	agency map[string]int
	stock  map[string]int
	inside [][]int // lines that live directly in the line
	first  map[string][]int
}

// Index makes the look-ups. It must be called once after the tables are
// filled and before any other method.
func (d *Department) Index() *Department {
	d.item = index(d.Items, func(x Item) string { return x.ID })
	d.rig = index(d.Rigs, func(x Rig) string { return x.ID })
	d.slot = index(d.Slots, func(x Slot) string { return x.ID })
	d.check = index(d.Checks, func(x Check) string { return strings.ToLower(x.ID) })
	d.member = index(d.Members, func(x Member) string { return x.ID })
	d.agency = index(d.Agencies, func(x Agency) string { return x.Code })
	d.stock = index(d.Stock, func(x Stock) string { return x.ID })
	d.inside = make([][]int, len(d.Items))
	for i := range d.Items {
		if k, ok := d.item[d.Items[i].Kit]; ok && d.Items[i].Kit != "" {
			d.inside[k] = append(d.inside[k], i)
		}
	}
	d.first = map[string][]int{}
	for i, r := range d.Rules {
		d.first[r.First] = append(d.first[r.First], i)
	}
	return d
}

func index[T any](rows []T, key func(T) string) map[string]int {
	m := make(map[string]int, len(rows))
	for i, r := range rows {
		m[key(r)] = i
	}
	return m
}

// ItemIndex is the position of a line in Items, or -1.
func (d *Department) ItemIndex(id string) int { return at(d.item, id) }

// Item finds a line by its id, nil if there is none.
func (d *Department) Item(id string) *Item { return get(d.Items, d.item, id) }

// Rig finds a rig of the table, nil if there is none.
func (d *Department) Rig(id string) *Rig { return get(d.Rigs, d.rig, id) }

// Slot finds a slot, nil if there is none.
func (d *Department) Slot(id string) *Slot { return get(d.Slots, d.slot, id) }

// Check finds a check, in any case; nil if there is none.
func (d *Department) Check(id string) *Check { return get(d.Checks, d.check, strings.ToLower(id)) }

// Member finds a member, nil if there is none.
func (d *Department) Member(id string) *Member { return get(d.Members, d.member, id) }

// Agency finds an agency, nil if there is none.
func (d *Department) Agency(code string) *Agency { return get(d.Agencies, d.agency, code) }

// StockLine finds a line of the station's store, nil if there is none.
func (d *Department) StockLine(id string) *Stock { return get(d.Stock, d.stock, id) }

// Inside lists the lines that live directly in the kit, as positions.
func (d *Department) Inside(line int) []int { return d.inside[line] }

// RulesFirst lists the stow rules that name the item as first.
func (d *Department) RulesFirst(id string) []int { return d.first[id] }

// RigAgency is the agency of the item's rig.
func (d *Department) RigAgency(rig string) string {
	if r := d.Rig(rig); r != nil {
		return r.Agency
	}
	return ""
}

// Clone copies the tables, not the rows' own slices; call Index on the copy.
func (d *Department) Clone() *Department {
	return &Department{
		Rigs: slices.Clone(d.Rigs), Slots: slices.Clone(d.Slots), Items: slices.Clone(d.Items),
		Rules: slices.Clone(d.Rules), Checks: slices.Clone(d.Checks), Members: slices.Clone(d.Members),
		Agencies: slices.Clone(d.Agencies), Places: slices.Clone(d.Places), Stock: slices.Clone(d.Stock),
		Pulls: slices.Clone(d.Pulls),
	}
}

func at(m map[string]int, id string) int {
	if i, ok := m[id]; ok {
		return i
	}
	return -1
}

func get[T any](rows []T, m map[string]int, id string) *T {
	if i, ok := m[id]; ok {
		return &rows[i]
	}
	return nil
}
