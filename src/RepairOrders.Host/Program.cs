// The host starts and ends here until the first route is mapped.
var app = WebApplication.CreateBuilder(args).Build();
await app.RunAsync();
