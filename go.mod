module github.com/drywright/drywright

go 1.26

ignore ./site/node_modules

require gonum.org/v1/gonum v0.17.0

require github.com/syumai/workers v0.31.0

require pgregory.net/rapid v1.3.0
