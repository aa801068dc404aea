rule = A drawing has a title, a description and a view box, holds only lines, shapes and text, and names every label.

name =
    .found = the name { $name }
    .expected = a name of its own: lower-case words and hyphens
    .action = Rename the file.

name-taken =
    .found = the name { $name }, which the build draws itself
    .expected = a name of its own: lower-case words and hyphens
    .action = Rename the file.

no-title =
    .found = no title
    .expected = <title>: what it shows
    .action = Add <title>… as the first line inside.

not-told =
    .found = no description
    .expected = <desc> with { $least } words or more: what a reader is to see in it
    .action = Write it under the title.

little-told =
    .found = a description that says little
    .expected = <desc> with { $least } words or more: what a reader is to see in it
    .action = Write it under the title.

no-view-box =
    .found = no view box
    .expected = viewBox="0 0 360 …", the size in units
    .action = Add viewBox to <svg>.

attribute =
    .found = { $value } on <{ $element }>
    .expected = what a page can show: DEVELOPERS.md lists it
    .action = Remove it.

element =
    .found = <{ $element }>
    .expected = lines, shapes and text: DEVELOPERS.md lists them
    .action =
        { $element ->
            [image] Trace it: a page takes lines and shapes, no pixels.
            [use] Unlink the clone, so that it is a shape.
            [style] Write colours on the shapes themselves: save as plain SVG, with presentation attributes.
            [a] Ungroup it: a drawing holds no links.
            [switch] Ungroup it.
           *[other] Remove it, or turn it into paths.
        }

id-twice =
    .found = the id { $id } a second time
    .expected = each id once
    .action = Rename one.

label-without-id =
    .found = the label { $label } without an id
    .expected = an id, such as id="gap"
    .action = Give the text an id that says which label it is.

no-such-id =
    .found = url(#{ $id }), which does not exist
    .expected = an id of this file
    .action = Correct it.

form =
    .found = data-for={ $words } on <{ $element }>
    .expected = words of forms that DEVELOPERS.md lists, on a group, a title or a description
    .action = Correct the word, or put what belongs to the form into a group.
