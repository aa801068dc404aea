not-invented = { $file }: only a job marked `invented: true` may be built into the site
no-day = { $file }: a job in the site needs `surveyed`, the day it is planned for
