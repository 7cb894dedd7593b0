package ui

// Folder is a folder as it is shown to choose from.
type Folder struct {
	Path   string   // of itself
	Up     string   // of the one it lies in, "" at the top
	Inside []string // paths of the folders in it
	Tables int      // tables of a department in it
}
