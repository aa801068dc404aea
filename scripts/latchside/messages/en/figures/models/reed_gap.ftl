low-steel = steel_mm must be at least { $least }, half the magnet's height: it runs up to the axis.
no-diameter = diameter_mm is needed for a cylinder.
no-width = width_mm and height_mm are needed for a bar.
no-operate = operate_mt or label_gap_mm is needed.
large-release = The release field is above the operate field, which is { $operate } mT here. A reed releases at a weaker one.
never-closes = This magnet never reaches the operate field: the reed stays open even where the parts touch.

release-assumed = No release field is stated, so six tenths of the operate field are taken. Parts differ.
out-of-reach = The reed is too far from the magnet here. A side lobe is no place to fit it.
open-touching = The magnet is so far to one side that the reed is open while the parts touch.
side-lobe = The reed also closes in a side lobe. It is not counted as make distance.
