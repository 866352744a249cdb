module gloamline

go 1.26.0

require (
	codeberg.org/go-pdf/fpdf v0.11.1 // indirect
	fyne.io/fyne/v2 v2.8.1 // indirect
	github.com/paulmach/orb v0.14.0 // indirect
	github.com/stretchr/testify v1.12.1 // indirect
	go.etcd.io/bbolt v1.5.0 // indirect
	golang.org/x/image v0.47.0 // indirect
	golang.org/x/sys v0.49.0 // indirect
	pgregory.net/rapid v1.3.0 // indirect
)
