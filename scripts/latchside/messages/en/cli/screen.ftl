planning = planning
pack = The pack is in { $folder }; open { $page }.
