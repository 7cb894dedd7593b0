package model

// An InventoryPatch is what a stores act changes. Put holds rows that are new
// or that replace the row with the same key; Remove lists keys by table.
// Stow rules and pull lists have no key: Whole names those replaced whole.
type InventoryPatch struct {
	Put    *Department         `json:"put,omitempty"`
	Remove map[string][]string `json:"remove,omitempty"`
	Whole  []string            `json:"whole,omitempty"`
}

// The tables of the inventory, by the names of their files.
const (
	TableRigs     = "rigs"
	TableSlots    = "slots"
	TableItems    = "items"
	TableRules    = "stow_rules"
	TableChecks   = "checks"
	TableMembers  = "members"
	TableAgencies = "agencies"
	TablePlaces   = "places"
	TableStock    = "stock"
	TablePulls    = "pull_lists"
)
